import '@fontsource-variable/source-sans-3/wght.css'
import './app/theme.css'
import { mount } from 'svelte'
import App from './app/App.svelte'

const target = document.getElementById('app')
if (!target) throw new Error('the page has no element #app to put the program in')
mount(App, { target })
