//! What is told apart in the core, by name: the studio's words for its kinds of things.

use plumpline_core::bend::BendWord;
use plumpline_core::calibrate::Quantity;
use plumpline_core::starter::Starter;
use plumpline_core::{Firmness, Kind, YarnFace};

/// The name of a starter, capitalised.
pub fn starter(starter: Starter) -> &'static str {
    match starter {
        Starter::Ball => say!("starter-ball"),
        Starter::Egg => say!("starter-egg"),
        Starter::Drop => say!("starter-drop"),
        Starter::Cone => say!("starter-cone"),
        Starter::Dome => say!("starter-dome"),
        Starter::Bean => say!("starter-bean"),
        Starter::Dish => say!("starter-dish"),
        Starter::Float => say!("starter-float"),
    }
}

/// One line on a starter.
pub fn about_starter(starter: Starter) -> &'static str {
    match starter {
        Starter::Ball => say!("starter-ball-about"),
        Starter::Egg => say!("starter-egg-about"),
        Starter::Drop => say!("starter-drop-about"),
        Starter::Cone => say!("starter-cone-about"),
        Starter::Dome => say!("starter-dome-about"),
        Starter::Bean => say!("starter-bean-about"),
        Starter::Dish => say!("starter-dish-about"),
        Starter::Float => say!("starter-float-about"),
    }
}

/// `Add a ball`.
pub fn add(starter: Starter) -> &'static str {
    match starter {
        Starter::Ball => say!("starter-add-ball"),
        Starter::Egg => say!("starter-add-egg"),
        Starter::Drop => say!("starter-add-drop"),
        Starter::Cone => say!("starter-add-cone"),
        Starter::Dome => say!("starter-add-dome"),
        Starter::Bean => say!("starter-add-bean"),
        Starter::Dish => say!("starter-add-dish"),
        Starter::Float => say!("starter-add-float"),
    }
}

/// `Create ball`, on the button of the start card.
pub fn create(starter: Starter) -> &'static str {
    match starter {
        Starter::Ball => say!("starter-create-ball"),
        Starter::Egg => say!("starter-create-egg"),
        Starter::Drop => say!("starter-create-drop"),
        Starter::Cone => say!("starter-create-cone"),
        Starter::Dome => say!("starter-create-dome"),
        Starter::Bean => say!("starter-create-bean"),
        Starter::Dish => say!("starter-create-dish"),
        Starter::Float => say!("starter-create-float"),
    }
}

/// How firmly it is stuffed, in one word; the same steps as [`Firmness::word`].
pub fn firmness(firmness: Firmness) -> &'static str {
    match firmness.word() {
        "soft" => say!("firmness-soft"),
        "medium" => say!("firmness-medium"),
        _ => say!("firmness-firm"),
    }
}

/// A kind of stitch, capitalised, in US terms as the studio speaks.
pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Single => say!("kind-single"),
        Kind::HalfDouble => say!("kind-half-double"),
        Kind::Double => say!("kind-double"),
    }
}

/// What yarn is like to look at.
pub fn yarn_face(face: YarnFace) -> &'static str {
    match face {
        YarnFace::Smooth => say!("yarn-smooth"),
        YarnFace::Wool => say!("yarn-wool"),
        YarnFace::Chenille => say!("yarn-chenille"),
    }
}

/// What a round that gains so many stitches does to the fabric, in one word.
pub fn bend(word: BendWord) -> &'static str {
    match word {
        BendWord::Ruffle => say!("bend-ruffle"),
        BendWord::Flat => say!("bend-flat"),
        BendWord::Cup => say!("bend-cup"),
        BendWord::Straight => say!("bend-straight"),
        BendWord::DrawIn => say!("bend-draw-in"),
    }
}

/// What a measured sample tells.
pub fn quantity(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::StitchWidth => say!("quantity-stitch-width"),
        Quantity::RoundHeight => say!("quantity-round-height"),
        Quantity::Firmness => say!("quantity-firmness"),
        Quantity::StiffnessAlong => say!("quantity-stiffness"),
        Quantity::YarnPerStitch => say!("quantity-yarn"),
    }
}
