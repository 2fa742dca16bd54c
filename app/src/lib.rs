//! Plumpline's studio and command line, over [`plumpline_core`].

pub mod cli;
