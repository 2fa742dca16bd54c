//! Stuffed shapes as closed triangle meshes, made from nodes and frames alone.

use std::f64::consts::TAU;

use parry3d::math::Vector;
use parry3d::query::{Ray, RayCast as _};
use parry3d::shape::{TriMesh, TriMeshFlags};
use plumpline_core::Rz;
use plumpline_core::toy::vector::{Axes, V3};

/// Places of a ring.
pub(crate) const SECTORS: u32 = 240;

/// The mesh of `nodes` turned about z, with lids at open ends where `lidded`, placed by `frame`.
pub(crate) fn mesh(nodes: &[Rz], frame: &Axes, lidded: bool) -> (Vec<Vector>, Vec<[u32; 3]>) {
    let mut nodes = nodes.to_vec();
    if lidded {
        let (first, last) = (nodes[0], nodes[nodes.len() - 1]);
        if first.r > 1e-9 {
            nodes.insert(0, Rz::new(0.0, first.z));
        }
        if last.r > 1e-9 {
            nodes.push(Rz::new(0.0, last.z));
        }
    }
    let mut places = Vec::new();
    for node in &nodes {
        for i in 0..SECTORS {
            let (sin, cos) = (TAU * f64::from(i) / f64::from(SECTORS)).sin_cos();
            places.push(vector(frame.place([node.r * cos, node.r * sin, node.z])));
        }
    }
    let mut faces = Vec::new();
    for k in 0..nodes.len() as u32 - 1 {
        for i in 0..SECTORS {
            let next = (i + 1) % SECTORS;
            let [a, b] = [k * SECTORS + i, k * SECTORS + next];
            let [c, d] = [a + SECTORS, b + SECTORS];
            // At a pole one of the two has no area.
            if nodes[k as usize].r > 1e-9 {
                faces.push([a, b, d]);
            }
            if nodes[k as usize + 1].r > 1e-9 {
                faces.push([a, d, c]);
            }
        }
    }
    (places, faces)
}

pub(crate) fn trimesh(nodes: &[Rz], frame: &Axes, lidded: bool) -> TriMesh {
    let (places, faces) = mesh(nodes, frame, lidded);
    let flags = TriMeshFlags::MERGE_DUPLICATE_VERTICES | TriMeshFlags::ORIENTED;
    TriMesh::with_flags(places, faces, flags).expect("a mesh")
}

pub(crate) fn vector(at: V3) -> Vector {
    Vector::new(at[0] as f32, at[1] as f32, at[2] as f32)
}

/// The first place where the mesh is met from `from` towards `to`, as the share of the way.
pub(crate) fn first(mesh: &TriMesh, from: V3, to: V3) -> Option<V3> {
    let way = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
    let ray = Ray::new(vector(from), vector(way));
    let s = f64::from(mesh.cast_local_ray(&ray, 1.0, false)?);
    Some([from[0] + s * way[0], from[1] + s * way[1], from[2] + s * way[2]])
}
