//! Plumpline's studio and command line, over [`plumpline_core`].
//!
//! The studio stands in floors, and no floor knows one above it:
//!
//! 1. [`kit`]: colours, type, icons, controls;
//! 2. [`document`]: the open project, its changes and their undoing;
//! 3. [`view`]: what is looked at;
//! 4. [`work`]: what is worked out, read and written, on threads where it takes time;
//! 5. [`bench`]: what stages may read, what they may ask for, commands and keys;
//! 6. [`fields`]: rows and cards that stages share;
//! 7. [`stages`]: a folder a stage, and what stands around them; beside them [`cli`], the same
//!    work without a window;
//! 8. [`window`]: the order of a frame, and what becomes of what the stages ask for.

// First, since all others take its words by macro.
#[macro_use]
pub mod kit;

pub mod bench;
pub mod cli;
pub mod document;
pub mod fields;
pub mod stages;
pub mod view;
pub mod window;
pub mod work;
