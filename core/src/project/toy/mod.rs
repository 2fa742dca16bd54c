//! The whole toy as it is saved: parts in their places and what holds them together. What
//! follows from it is worked out in [`crate::toy`].

pub mod attachment;
pub mod embroidery;
pub mod part;
mod validate;

use serde::{Deserialize, Serialize};

use crate::piece::PieceId;

use attachment::{Attachment, LARGEST_MM};
use embroidery::Embroidery;
use part::{Copies, Part};

pub use validate::{LEGS, MOST_AROUND, MOST_ATTACHMENTS, MOST_COPIES_IN_ALL, MOST_PARTS};
pub(crate) use validate::{validate, validate_embroidery};

/// How the pieces of a project make one toy.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Toy {
    /// Who it is made for.
    #[serde(default)]
    pub made_for: MadeFor,
    /// The parts; each stands after what carries it, so nothing carries itself by any way
    /// round.
    #[serde(default)]
    pub parts: Vec<Part>,
    /// What holds parts together, or the toy up.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub attachments: Vec<Attachment>,
    /// What is embroidered on its parts, beside eyes and noses.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub embroidery: Vec<Embroidery>,
    /// What the maker has to say of it beside the usual cautions, a sentence each.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<String>,
}

/// Who a toy is made for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum MadeFor {
    /// A baby, or any child under 3.
    Baby,
    /// A soft toy to hold and cuddle, whatever the age on its label.
    #[default]
    SoftToy,
    /// A child of 3 or more, not for cuddling.
    ThreeAndOver,
    /// Nobody to play with: it stands or hangs.
    Ornament,
}

impl Toy {
    /// Whether nothing is put together yet.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// The body that carries part `index`, one on another; itself where nothing does.
    pub fn body_of(&self, index: usize) -> usize {
        let mut at = index;
        while let Some(seat) = self.parts.get(at).and_then(|part| part.on) {
            at = seat.part;
        }
        at
    }

    /// Whether part `index` could sit on part `on`: not on itself, nor on what it carries.
    pub fn can_carry(&self, on: usize, index: usize) -> bool {
        let mut at = Some(on);
        while let Some(part) = at {
            if part == index {
                return false;
            }
            at = self.parts.get(part).and_then(|part| part.on).map(|seat| seat.part);
        }
        self.parts.get(on).is_some_and(|part| part.piece().is_some())
    }

    /// Puts part `index` as `part`, which may be carried by one that stands later in the list:
    /// then what it carries moves behind that with it. Returns where it stands now. A part that
    /// would carry itself stays as it was.
    pub fn change(&mut self, index: usize, part: Part) -> usize {
        let carried = part.on.is_none_or(|seat| self.can_carry(seat.part, index));
        let Some(place) = self.parts.get_mut(index).filter(|_| carried) else { return index };
        *place = part;
        // The order in which each stands after what carries it and which else changes least.
        let mut order: Vec<usize> = Vec::with_capacity(self.parts.len());
        while order.len() < self.parts.len() {
            let ready = |&i: &usize| {
                let on = self.parts[i].on.map(|seat| seat.part);
                !order.contains(&i) && on.is_none_or(|on| order.contains(&on))
            };
            let Some(next) = (0..self.parts.len()).find(ready) else { return index };
            order.push(next);
        }
        let to = |old: usize| order.iter().position(|&i| i == old).unwrap_or(old);
        self.attachments.iter_mut().for_each(|a| a.renumber(to));
        self.embroidery.iter_mut().for_each(|line| line.part = to(line.part));
        for seat in self.parts.iter_mut().filter_map(|part| part.on.as_mut()) {
            seat.part = to(seat.part);
        }
        self.parts = order.iter().map(|&old| self.parts[old].clone()).collect();
        to(index)
    }

    /// Gives each copy of part `index` a place of its own, where it is now, with what it
    /// carries. Returns whether it had copies, and all of them had room in the list.
    pub fn separate(&mut self, index: usize) -> bool {
        let Some(part) = self.parts.get(index).filter(|part| part.on.is_some()) else {
            return false;
        };
        let (copies, n) = (part.copies, part.copies.number());
        let mut with: Vec<usize> = vec![index];
        for (i, part) in self.parts.iter().enumerate() {
            if part.on.is_some_and(|seat| with.contains(&seat.part)) {
                with.push(i);
            }
        }
        if n < 2 || self.parts.len() + with.len() * (n as usize - 1) > MOST_PARTS {
            return false;
        }
        self.parts[index].copies = Copies::One;
        for copy in 1..n {
            let first = self.parts.len();
            for &old in &with {
                let mut part = self.parts[old].clone();
                if let Some(seat) = &mut part.on {
                    let at = with.iter().position(|&i| i == seat.part);
                    seat.part = at.map_or(seat.part, |at| first + at);
                    if copies == Copies::Mirrored {
                        (seat.at.around, seat.turn_deg) = (-seat.at.around, -seat.turn_deg);
                    } else if old == index {
                        let around = seat.at.around + f64::from(copy) / f64::from(n);
                        seat.at.around = around - around.round();
                    }
                }
                self.parts.push(part);
            }
        }
        true
    }

    /// Takes out part `index` with everything that it carries and that is attached to those.
    pub fn remove(&mut self, index: usize) {
        let mut gone = vec![false; self.parts.len()];
        for (i, part) in self.parts.iter().enumerate() {
            let carried = part.on.is_some_and(|seat| gone.get(seat.part) == Some(&true));
            gone[i] = i == index || carried;
        }
        let is_gone = |part: usize| gone.get(part) == Some(&true);
        let to = |part: usize| part - gone.iter().take(part).filter(|&&g| g).count();
        self.attachments.retain(|a| !a.parts().into_iter().any(is_gone));
        self.attachments.iter_mut().for_each(|a| a.renumber(to));
        self.embroidery.retain(|line| !is_gone(line.part));
        self.embroidery.iter_mut().for_each(|line| line.part = to(line.part));
        let mut place = 0..;
        self.parts.retain(|_| place.next().is_some_and(|i| !is_gone(i)));
        for seat in self.parts.iter_mut().filter_map(|part| part.on.as_mut()) {
            seat.part = to(seat.part);
        }
    }

    /// `piece` came out `scale` times as large: what is measured in its
    /// millimetres goes with it, how deep it is sunk in and what hangs from it or carries it.
    /// Small things are bought in sizes and stay.
    pub(crate) fn piece_scaled(&mut self, piece: PieceId, scale: f64) {
        if !(scale.is_finite() && scale > 0.0) {
            return;
        }
        let scaled = |mm: &mut f64| *mm = (*mm * scale).clamp(-LARGEST_MM, LARGEST_MM);
        let is_of: Vec<bool> = self.parts.iter().map(|p| p.piece() == Some(piece)).collect();
        for (part, is_of) in self.parts.iter_mut().zip(&is_of) {
            if let (Some(seat), true) = (&mut part.on, is_of) {
                scaled(&mut seat.sunk_mm);
            }
        }
        for attachment in &mut self.attachments {
            match attachment {
                Attachment::Cord(cord) if is_of.get(cord.from.part) == Some(&true) => {
                    scaled(&mut cord.drop_mm);
                }
                Attachment::Wire(wire) if is_of.get(wire.carries.part) == Some(&true) => {
                    scaled(&mut wire.free_mm);
                }
                Attachment::Sling(sling)
                    if sling.legs.iter().any(|leg| is_of.get(leg.part) == Some(&true)) =>
                {
                    scaled(&mut sling.above_mm);
                }
                _ => {}
            }
        }
    }

    /// `piece` was taken out of the project: its parts go with it.
    pub(crate) fn piece_removed(&mut self, piece: PieceId) {
        while let Some(i) = self.parts.iter().position(|p| p.piece() == Some(piece)) {
            self.remove(i);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::part::Seat;
    use super::*;

    #[test]
    fn what_a_part_carries_goes_with_it() {
        let on = |part| Some(Seat::new(part, 0.5, 0.0));
        let part = |piece, on| Part::new(part::Thing::Piece(PieceId::new(piece)), on);
        let joint = |part| Attachment::Joint(attachment::Joint { part, passes: 2 });
        let mut toy = Toy {
            parts: vec![part(0, None), part(1, on(0)), part(2, on(1)), part(3, on(0))],
            attachments: vec![joint(2), joint(3)],
            ..Toy::default()
        };
        toy.piece_removed(PieceId::new(1));
        assert_eq!(toy.parts, [part(0, None), part(3, on(0))]);
        assert_eq!(toy.attachments, [joint(1)]);
    }

    #[test]
    fn copies_get_places_of_their_own() {
        let mut ear =
            Part::new(part::Thing::Piece(PieceId::new(1)), Some(Seat::new(0, 0.3, 0.2)));
        ear.copies = Copies::Mirrored;
        ear.on.as_mut().expect("a seat").turn_deg = 40.0;
        let ring = Part::new(part::Thing::Piece(PieceId::new(2)), Some(Seat::new(1, 0.5, 0.1)));
        let body = Part::body(PieceId::new(0));
        let parts = vec![body, ear, ring];
        let mut toy = Toy { parts, ..Toy::default() };
        assert!(!toy.separate(0) && !toy.separate(2), "there is one of each");
        assert!(toy.separate(1));
        let told =
            toy.parts.iter().filter_map(|p| p.on).map(|s| (s.part, s.at.around, s.turn_deg));
        assert_eq!(
            told.collect::<Vec<_>>(),
            [(0, 0.2, 40.0), (1, 0.1, 0.0), (0, -0.2, -40.0), (3, -0.1, -0.0)]
        );
        let mut around = Toy::default();
        let mut leg =
            Part::new(part::Thing::Piece(PieceId::new(1)), Some(Seat::new(0, 0.8, 0.4)));
        leg.copies = Copies::Around(4);
        around.parts = vec![Part::body(PieceId::new(0)), leg];
        assert!(around.separate(1));
        let turns: Vec<f64> =
            around.parts.iter().filter_map(|p| p.on).map(|s| s.at.around).collect();
        let wanted = [0.4, -0.35, -0.1, 0.15];
        assert!(turns.iter().zip(wanted).all(|(a, b)| (a - b).abs() < 1e-12), "{turns:?}");
    }

    #[test]
    fn a_part_can_move_to_one_that_stands_later() {
        let on = |part| Some(Seat::new(part, 0.5, 0.0));
        let part = |piece, on| Part::new(part::Thing::Piece(PieceId::new(piece)), on);
        let joint = |part| Attachment::Joint(attachment::Joint { part, passes: 2 });
        // A body, an ear that carries a ring, a head.
        let mut toy = Toy {
            parts: vec![part(0, None), part(1, on(0)), part(2, on(1)), part(3, on(0))],
            attachments: vec![joint(1), joint(2), joint(3)],
            ..Toy::default()
        };
        assert!(!toy.can_carry(2, 1) && !toy.can_carry(1, 1) && toy.can_carry(3, 1));
        let before = toy.clone();
        assert_eq!(toy.change(1, part(1, on(2))), 1);
        assert_eq!(toy, before, "it would carry itself");
        assert_eq!(toy.change(1, part(1, on(3))), 2);
        assert_eq!(toy.parts, [part(0, None), part(3, on(0)), part(1, on(1)), part(2, on(2))]);
        assert_eq!(toy.attachments, [joint(2), joint(3), joint(1)]);
    }
}
