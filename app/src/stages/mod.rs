//! What the window shows, a folder a stage; [`around`] is what stands around every stage. No
//! stage knows another.

pub mod around;
pub mod assembly;
pub mod lesson;
pub mod make;
pub mod proofread;
pub mod shape;
pub mod sheet;
pub mod sizes;
