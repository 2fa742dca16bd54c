//! The lesson: curvature counted, cloth let go, and what the course says of both.

mod counted;
mod course;
mod drawn;
mod relaxed;
