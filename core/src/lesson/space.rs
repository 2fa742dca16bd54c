//! Sums of vectors as the net needs them, by the million. Nothing is fused: on a processor
//! without the instruction a fused product is a call.

pub(in crate::lesson) use crate::toy::vector::V3;

pub(in crate::lesson) fn add(a: V3, b: V3) -> V3 {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

pub(in crate::lesson) fn sub(a: V3, b: V3) -> V3 {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(in crate::lesson) fn scaled(a: V3, by: f64) -> V3 {
    [a[0] * by, a[1] * by, a[2] * by]
}

/// `a` + `b`·`by`.
pub(in crate::lesson) fn plus(a: V3, b: V3, by: f64) -> V3 {
    [a[0] + b[0] * by, a[1] + b[1] * by, a[2] + b[2] * by]
}

pub(in crate::lesson) fn dot(a: V3, b: V3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(in crate::lesson) fn cross(a: V3, b: V3) -> V3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

pub(in crate::lesson) fn length(a: V3) -> f64 {
    dot(a, a).sqrt()
}

pub(in crate::lesson) fn distance(a: V3, b: V3) -> f64 {
    length(sub(a, b))
}
