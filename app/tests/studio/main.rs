//! The studio without a window: what people do in it, and what then stands on screen.

mod assembly;
mod bench;
mod board;
mod body;
mod bringing_in;
mod choices;
mod faults;
mod files;
mod hand;
mod homes;
mod hurdles;
mod journeys;
mod lesson;
mod making;
mod making_sizes;
mod people;
mod pieces;
mod printing;
mod proofread;
mod shape;
mod sizes;
mod starting;
mod trust;
mod wait;
mod walk;
mod words;
