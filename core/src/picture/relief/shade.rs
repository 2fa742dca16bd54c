//! Light and colour: a soft key from the upper left, a fill from above, deep shade in grooves.

use super::space::{V3, dot, mix, unit};
use crate::picture::Rgb;
use crate::piece::YarnFace;

/// Towards the key light, in the eye's frame: left, up and in front.
const KEY: V3 = [-0.58, -0.62, 0.53];
/// How far the key reaches round the form: wool scatters light.
const WRAP: f32 = 0.22;
/// Light from all sides, what more of it comes from above, and the key.
const FILL: f32 = 0.50;
const ABOVE: f32 = 0.16;
const FULL: f32 = 0.60;
/// How much deeper a colour is in full shade: light that has met wool twice.
const DEEPER: f32 = 0.55;
/// Polyester stuffing, as most of it is sold. Common practice, no source.
const STUFFING: Rgb = [240, 234, 222];
/// Steps of light in which a colour is worked out.
const STEPS: usize = 64;
/// The brightest light that is told apart.
const MOST: f32 = 1.5;

/// What is lit.
#[derive(Debug, Clone, Copy)]
pub(super) enum ShadeGround {
    Yarn {
        /// Counted from 1.
        round: u32,
        yarn: usize,
        face: YarnFace,
    },
    Stuffing,
}

/// A place in its light.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lit {
    /// Unit normals in the eye's frame, with the relief and without.
    pub(super) normal: V3,
    pub(super) smooth: V3,
    /// How much light grooves let in, and neighbours.
    pub(super) groove: f32,
    pub(super) open: f32,
    pub(super) tint: f32,
    pub(super) ground: ShadeGround,
}

/// A colour in all its lights, worked out once: powers are dear.
#[derive(Debug, Clone)]
struct Dye([[f32; 3]; STEPS + 1]);

/// The colours of a part.
#[derive(Debug, Clone)]
pub(super) struct Dyes {
    yarns: Vec<Dye>,
    stuffing: Dye,
    lit: Option<(u32, Dye)>,
}

impl Dye {
    fn new(colour: Rgb) -> Self {
        Self(std::array::from_fn(|i| {
            let light = MOST * i as f32 / STEPS as f32;
            let shade = (1.0 - light).clamp(0.0, 1.0);
            colour.map(|c| {
                let own = (f32::from(c) / 255.0).powf(1.0 + DEEPER * shade * shade.sqrt());
                let level = 255.0 * own * light.min(1.0);
                // A black yarn still shows its form, and bright light leaves a colour its own.
                let raised = level + 10.0 * light * (1.0 - own);
                let bright = (light - 1.0).max(0.0);
                mix(raised, 255.0, 0.42 * bright)
            })
        }))
    }

    fn tone(&self, light: f32) -> [f32; 3] {
        let at = (light / MOST).clamp(0.0, 1.0) * STEPS as f32;
        let i = (at as usize).min(STEPS - 1);
        let part = at - i as f32;
        [0, 1, 2].map(|c| mix(self.0[i][c], self.0[i + 1][c], part))
    }
}

/// What has no stitches: one colour in its light.
#[derive(Debug, Clone)]
pub(super) struct PlainDye {
    dye: Dye,
    shines: bool,
}

impl PlainDye {
    pub(super) fn new(colour: Rgb, shines: bool) -> Self {
        Self { dye: Dye::new(colour), shines }
    }

    /// The colour of a place whose unit normal in the eye's frame is `normal`, channels 0 to
    /// 255.
    pub(super) fn colour(&self, normal: V3) -> [f32; 3] {
        let key = unit(KEY);
        let facing = ((dot(normal, key) + WRAP) / (1.0 + WRAP)).clamp(0.0, 1.0);
        let above = 0.5 - 0.5 * normal[1];
        let own = self.dye.tone(FILL + ABOVE * above + FULL * facing);
        if !self.shines {
            return own;
        }
        // The key light mirrored: the sixty-fourth power of how squarely it is.
        let half = unit([key[0], key[1], key[2] + 1.0]);
        let squarely = (0..6).fold(dot(normal, half).max(0.0), |power, _| power * power);
        own.map(|c| mix(c, 255.0, 0.9 * squarely))
    }
}

impl Dyes {
    pub(super) fn new(colours: &[Rgb], lit: Option<(u32, Rgb)>) -> Self {
        let none = [[128; 3]];
        let colours = if colours.is_empty() { &none[..] } else { colours };
        Self {
            yarns: colours.iter().map(|&c| Dye::new(c)).collect(),
            stuffing: Dye::new(STUFFING),
            lit: lit.map(|(round, colour)| (round, Dye::new(colour))),
        }
    }

    fn of(&self, ground: ShadeGround) -> &Dye {
        let ShadeGround::Yarn { round, yarn, .. } = ground else { return &self.stuffing };
        match &self.lit {
            Some((lit, dye)) if *lit == round => dye,
            _ => self.yarns.get(yarn).unwrap_or(&self.yarns[0]),
        }
    }

    /// The colour of a place in its light, channels 0 to 255.
    pub(super) fn colour(&self, lit: &Lit) -> [f32; 3] {
        let key = unit(KEY);
        let facing = ((dot(lit.normal, key) + WRAP) / (1.0 + WRAP)).clamp(0.0, 1.0);
        let above = 0.5 - 0.5 * lit.normal[1];
        let face = match lit.ground {
            ShadeGround::Yarn { face, .. } => face,
            ShadeGround::Stuffing => YarnFace::Smooth,
        };
        // Light goes a way through fibres that stand off, and out of the grooves again.
        let (deepest, halo) = match face {
            YarnFace::Smooth => (0.48, 0.05),
            YarnFace::Wool => (0.56, 0.16),
            YarnFace::Chenille => (0.50, 0.22),
        };
        let groove = mix(deepest, 1.0, lit.groove);
        // Fibres that stand off the cloth catch light where it turns away; a pile most.
        let normal = if face == YarnFace::Chenille { lit.normal } else { lit.smooth };
        let off = 1.0 - normal[2].clamp(0.0, 1.0);
        let halo = halo * off * off * if face == YarnFace::Chenille { 1.0 } else { off };
        let light =
            (FILL + ABOVE * above + halo + FULL * facing * mix(0.6, 1.0, lit.groove)) * groove;
        self.of(lit.ground).tone(light * lit.open * lit.tint)
    }
}
