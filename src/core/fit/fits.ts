import { regionArea } from '../geometry/polygon'
import type { LaidFace } from './lay-face'

/** Every cell has a leaf, and all pieces lie in sound wood somewhere. */
export const hasPlace = (face: LaidFace): boolean =>
  regionArea(face.play.region) > 0 && face.bare < 0.01 && face.pieces.every(({ leaf }) => leaf !== null)
