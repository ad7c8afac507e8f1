import '@fontsource-variable/source-sans-3/wght.css'
import './app/theme.css'
import { mount } from 'svelte'
import App from './app/App.svelte'
import { JobDoor } from './app/job-door.svelte'
import { demoJob } from './core/figure/demo-job'
import { JobStore } from './store/job-store.svelte'
import { Workshop } from './store/workshop.svelte'
import { createSolver, type PicturesFor } from './workers/slow-door'
import { hasPictures, woodOfFlitch } from './workers/wood-of-flitch'

const target = document.getElementById('app')
if (!target) throw new Error('the page has no element #app to put the program in')

const picturesFor: PicturesFor = ({ kind, flitches: { field } }) =>
  kind === 'proposals' && hasPictures(field) ? woodOfFlitch(field, door.shelf) : null
const workshop = new Workshop(new JobStore(demoJob()), createSolver(picturesFor))
const door = new JobDoor(workshop)
// boards draw their text once: the type must be there, but not at any price
const typeface = document.fonts.load('16px "Source Sans 3 Variable"')
await Promise.all([door.begin(), Promise.race([typeface, new Promise((done) => setTimeout(done, 1500))])])
mount(App, { target, props: { workshop, door } })
