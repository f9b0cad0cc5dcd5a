/* What the turning view of the pad takes from three.js 0.187.0; README.md beside this file has the command that bundles it. */
export {
  AlwaysStencilFunc, BackSide, Box3, BufferAttribute, BufferGeometry, Color, DataTexture, DecrementWrapStencilOp,
  DirectionalLight, DoubleSide, EdgesGeometry, ExtrudeGeometry, FrontSide, Group, HemisphereLight, IncrementWrapStencilOp,
  LatheGeometry, LinearFilter, LinearMipmapLinearFilter, LineBasicMaterial, LineSegments, Mesh, MeshBasicMaterial,
  MeshLambertMaterial, NotEqualStencilFunc, PerspectiveCamera, Plane, PlaneGeometry, RepeatWrapping, ReplaceStencilOp, Scene,
  Shape, Sphere, SRGBColorSpace, Vector2, Vector3, WebGLRenderer,
} from "three";
export { toCreasedNormals } from "three/examples/jsm/utils/BufferGeometryUtils.js";
