//! The relief: a stuffed piece with the relief of its stitches, one ray a pixel.
//!
//! A [`Relief`] is a piece and its plan made ready: the forecast turned about its axis, and on
//! it the stitches where placement has them. A [`ReliefScene`] is one or more of them, each in its
//! [`ReliefPose`], as a [`ReliefView`] sees them, and things without stitches among them;
//! [`ReliefScene::rows`] draws a band of its rows. [`Drape`] is cloth that no axis turns.
//!
//! Everything here is a pure function of its arguments: however a picture is cut into bands,
//! and whoever draws them, its bytes are the same.

mod animated;
mod block;
mod body;
mod cloth;
mod curve;
mod drape;
mod fabric;
mod facet;
mod frill;
mod hit;
mod latitude;
mod look;
mod outline;
mod palette;
mod patch;
mod plain;
mod pressed;
mod profile;
mod ray;
mod sample;
mod scene;
mod shade;
mod shapes;
mod space;
mod still;
mod tile;
mod view;

pub use animated::animated_png;
pub use body::Relief;
pub use drape::{Drape, DrapeCell, DrapeStitch};
pub use plain::{BareForm, PosedPlain};
pub use scene::ReliefScene;
pub use space::{ReliefPose, V3};
pub use still::{MOST_PIXELS, Still};
pub use view::{PosedRelief, Quality, ReliefFilling, ReliefView, Seen};
