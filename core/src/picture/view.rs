//! The body seen from one side: where a place falls, and how a cell of cloth looks there.

use std::cell::OnceCell;

use super::leaf::Leaf;
use super::light::{Dye, Light, mixed, speckle};
use super::scene::{Paint, Rim, Scene};
use super::stitches::Cell;
use super::vector::{Eye, V3, add, scaled, unit};
use super::{Rgb, Viewpoint};
use crate::plan::placement::Stitch;

/// Cloth between the legs, and the inside of a body, against the yarn's own light.
const BETWEEN: f32 = 0.54;
const INSIDE: f32 = 0.46;
/// Cloth between the legs of a lit round: it must stand out on a yarn of its own colour.
const BETWEEN_LIT: f32 = 0.30;
/// How much one stitch's tint differs from the next: yarn is never even.
const UNEVEN: f32 = 0.045;
/// How far a leg's own roundness turns its light to its side.
const ROUND: f32 = 0.50;
/// Cloth that faces the eye by more than this lies among its like: nobody sees its edge.
const AMONG: f32 = 0.45;

/// A colour as it is worked plain, as increases and as decreases; each dyed when first seen.
type Dyes = [OnceCell<Dye>; 3];

/// An eye, and the colours it sees.
pub(super) struct BodyView<'a> {
    pub(super) eye: Eye,
    pub(super) look: &'a Viewpoint,
    colours: &'a [Rgb],
    /// By yarn; the last are those of a lit round.
    dyes: Vec<Dyes>,
}

impl<'a> BodyView<'a> {
    pub(super) fn new(eye: Eye, look: &'a Viewpoint, colours: &'a [Rgb]) -> Self {
        let dyes = (0..=colours.len()).map(|_| Dyes::default()).collect();
        Self { eye, look, colours, dyes }
    }

    fn is_lit(&self, round: u32) -> bool {
        self.look.lit.is_some_and(|(lit, _)| lit == round)
    }

    /// Colour of a round in this yarn.
    pub(super) fn colour(&self, round: u32, yarn: usize) -> Rgb {
        match self.look.lit {
            Some((lit, colour)) if lit == round => colour,
            _ => self.colours.get(yarn).or(self.colours.first()).copied().unwrap_or([128; 3]),
        }
    }

    /// The same with its deeper tones, as `worked` shows it.
    fn dye(&self, round: u32, yarn: usize, worked: Stitch) -> &Dye {
        let yarns = self.colours.len();
        let index = match self.is_lit(round) {
            true => yarns,
            // As colour() has it, an unknown yarn looks like the first.
            false if yarn < yarns => yarn,
            false => 0,
        };
        self.dyes[index][worked as usize].get_or_init(|| {
            // Shaping is told by form alone to a good eye; a breath of light helps the others.
            let own = self.colour(round, yarn);
            Dye::new(match worked {
                Stitch::Plain => own,
                Stitch::Increase => mixed(own, [255, 252, 240], 0.10),
                Stitch::Decrease => mixed(own, [30, 24, 40], 0.12),
            })
        })
    }

    /// Where a place of the body falls, pixels.
    pub(super) fn at(&self, place: V3) -> [f32; 2] {
        let seen = self.eye.see(place);
        [seen[0] * self.look.scale, seen[1] * self.look.scale]
    }

    fn paint(&self, cell: &Cell, colour: Rgb, rim: Rim) -> Paint {
        let depth = self.eye.see(cell.middle)[2];
        Paint { colour, depth, round: Some(cell.round), stitch: cell.stitch, rim }
    }

    /// Corners of the cloth under a cell, a little beyond its own.
    fn corners(&self, cell: &Cell) -> [[f32; 2]; 4] {
        let corners = cell.cloth.map(|corner| self.at(corner));
        let sum = corners.iter().fold([0.0; 2], |s, c| [s[0] + c[0], s[1] + c[1]]);
        let middle = [0.25 * sum[0], 0.25 * sum[1]];
        corners.map(|c| [0, 1].map(|i| middle[i] + cell.reach * (c[i] - middle[i])))
    }

    pub(super) fn cloth(&self, scene: &mut Scene, cell: &Cell) {
        let normal = self.eye.see(cell.normal);
        let light = Light::on(normal, cell.openness);
        // A band stands for its stitches: it has their light, not that of the gaps.
        let times = match (cell.stitch.is_some(), self.is_lit(cell.round)) {
            (false, _) => 0.9,
            (true, false) => BETWEEN,
            (true, true) => BETWEEN_LIT,
        };
        let dye = self.dye(cell.round, cell.yarn, Stitch::Plain);
        let among = cell.stitch.is_some() && normal[2] > AMONG;
        let rim = if among { Rim::Lost } else { Rim::Seen };
        let paint = self.paint(cell, light.tint(dye, times), rim);
        scene.push(paint, self.corners(cell));
    }

    pub(super) fn inside(&self, scene: &mut Scene, cell: &Cell) {
        let normal = self.eye.see(scaled(cell.normal, -1.0));
        let light = Light::on(normal, 1.0);
        let uneven = 1.0 + UNEVEN * speckle(cell.round, cell.stitch.unwrap_or(0));
        let dye = self.dye(cell.round, cell.yarn, Stitch::Plain);
        let paint = self.paint(cell, light.tint(dye, INSIDE * uneven), Rim::Seen);
        scene.push(paint, self.corners(cell));
    }

    pub(super) fn legs(&self, scene: &mut Scene, cell: &Cell) {
        let normal = self.eye.see(cell.normal);
        let across = self.eye.see(cell.across);
        let uneven = 1.0 + UNEVEN * speckle(cell.round, cell.stitch.unwrap_or(0));
        let dye = self.dye(cell.round, cell.yarn, cell.worked);
        for (leg, to) in cell.legs.iter().zip([-1.0_f32, 1.0]) {
            let leaf = Leaf::seen(leg, &self.eye, across, normal, self.look.scale);
            let turned = unit(add(normal, scaled(across, to * ROUND)));
            let light = Light::on(turned, cell.openness);
            let paint = self.paint(cell, light.tint(dye, uneven), Rim::Seen);
            scene.push(paint, leaf.outline().iter());
            self.strands(scene, cell, &leaf, light, dye, uneven);
        }
    }

    /// The ridge of a leg, which catches the light, and where there is room the twist of its
    /// plies.
    fn strands(
        &self,
        scene: &mut Scene,
        cell: &Cell,
        leaf: &Leaf,
        light: Light,
        dye: &Dye,
        uneven: f32,
    ) {
        let side = leaf.side();
        // The ridge lies towards the light, up and to the left.
        let towards = -(0.62 * side[0] + 0.78 * side[1]);
        let dark = self.paint(cell, light.tint(dye, 0.84 * uneven), Rim::Lost);
        scene.push(dark, leaf.strand((0.02, 0.98), -0.62 * towards, 0.24).iter());
        let ridge = self.paint(cell, light.tint(dye, 1.13 * uneven), Rim::Lost);
        scene.push(ridge, leaf.strand((0.06, 0.94), 0.26 * towards, 0.30).iter());
        if leaf.is_full() {
            let ply = self.paint(cell, light.tint(dye, 0.90 * uneven), Rim::Lost);
            for u in [0.02, 0.30, 0.58] {
                let (a, b) = (leaf.at(u, -0.78), leaf.at(u + 0.32, 0.78));
                let (c, d) = (leaf.at(u + 0.36, 0.76), leaf.at(u + 0.04, -0.76));
                scene.push(ply, [a, b, c, d]);
            }
        }
    }
}
