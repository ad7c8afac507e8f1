import { regionArea } from '../geometry/polygon'
import { BARE, groupsOf, type LaidFace } from './lay-face'

/** Every cell has a leaf, and all pieces lie in sound wood somewhere. */
export const hasPlace = (face: LaidFace): boolean =>
  groupsOf(face).every(({ play }) => regionArea(play.region) > 0) &&
  face.bare < BARE &&
  face.pieces.every(({ leaf }) => leaf !== null)
