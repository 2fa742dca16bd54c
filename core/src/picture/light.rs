//! Light: a key from the upper left, a soft fill from everywhere, deep shade.

use super::Rgb;
use super::vector::{V3, dot};

/// Towards the key light, in the eye's frame: left, up and in front. A unit vector.
const KEY: V3 = [-0.50, -0.58, 0.643];
/// How far the key reaches round the form: wool scatters light.
const WRAP: f32 = 0.42;
/// What the fill alone leaves of a colour.
const FILL: f32 = 0.58;
/// What fill and key together make of it.
const FULL: f32 = 1.05;
/// How much deeper a colour is in full shade: light that has met wool twice.
const DEEPER: f32 = 0.45;
/// What the key throws back of itself.
const WARM: [f32; 3] = [255.0, 246.0, 228.0];

/// Steps of shade that a colour is worked out in; between them it is mixed.
const SHADES: usize = 32;

/// A colour of a yarn with its deeper tones, worked out once: powers are dear, and a body
/// asks for some ten thousand tints.
#[derive(Debug, Clone)]
pub(super) struct Dye {
    /// Channels, 0 to 255, by shade.
    tones: [[f32; 3]; SHADES + 1],
}

impl Dye {
    pub(super) fn new(colour: Rgb) -> Self {
        Self { tones: std::array::from_fn(|i| tone(colour, i as f32 / SHADES as f32)) }
    }

    /// The colour in `shade` of all shade, 0 to 1.
    fn tone(&self, shade: f32) -> [f32; 3] {
        let at = shade.clamp(0.0, 1.0) * SHADES as f32;
        let step = (at as usize).min(SHADES - 1);
        let (a, b, part) = (self.tones[step], self.tones[step + 1], at - step as f32);
        std::array::from_fn(|i| a[i] + part * (b[i] - a[i]))
    }
}

/// `colour` in `shade` of all shade, 0 to 1; channels 0 to 255.
fn tone(colour: Rgb, shade: f32) -> [f32; 3] {
    colour.map(|c| 255.0 * (f32::from(c) / 255.0).powf(1.0 + DEEPER * shade))
}

/// Light on a place: how bright, and how much of the key's own colour it throws back.
#[derive(Debug, Clone, Copy)]
pub(super) struct Light {
    level: f32,
    sheen: f32,
}

impl Light {
    /// Light on a surface of unit normal `normal` that `open` of all light reaches.
    pub(super) fn on(normal: V3, open: f32) -> Self {
        let facing = ((dot(normal, KEY) + WRAP) / (1.0 + WRAP)).clamp(0.0, 1.0);
        // From below comes less of the fill.
        let fill = FILL * (1.0 - 0.16 * normal[1].max(0.0));
        Self {
            level: (fill + (FULL - fill) * facing) * open,
            sheen: 0.11 * facing.powi(4) * open,
        }
    }

    /// The even light in which a cut face is drawn.
    pub(super) fn soft() -> Self {
        Self { level: 1.0, sheen: 0.0 }
    }

    /// The colour of `dye` in this light, `times` as bright.
    pub(super) fn tint(self, dye: &Dye, times: f32) -> Rgb {
        self.lit(dye.tone(1.0 - self.level * times), times)
    }

    /// As [`Self::tint`], of a colour that is not asked for often.
    pub(super) fn tint_once(self, colour: Rgb, times: f32) -> Rgb {
        let shade = (1.0 - self.level * times).clamp(0.0, 1.0);
        self.lit(tone(colour, shade), times)
    }

    fn lit(self, tone: [f32; 3], times: f32) -> Rgb {
        let level = self.level * times;
        let sheen = (self.sheen * times).min(1.0);
        std::array::from_fn(|i| {
            let own = tone[i] * level;
            // A black yarn still shows its form.
            let raised = own + (9.0 * level).min(255.0 - own.min(255.0));
            (raised + (WARM[i] - raised) * sheen).clamp(0.0, 255.0) as u8
        })
    }
}

/// `share` of `b` in `a`.
pub(super) fn mixed(a: Rgb, b: Rgb, share: f32) -> Rgb {
    let mix = |a: u8, b: u8| (f32::from(a) + (f32::from(b) - f32::from(a)) * share) as u8;
    [mix(a[0], b[0]), mix(a[1], b[1]), mix(a[2], b[2])]
}

/// A number from −1 to 1 that looks like chance and is the same every time.
pub(super) fn speckle(a: u32, b: u32) -> f32 {
    // A mix of bits in the manner of integer hashes; any odd constants would do.
    let mut x = a.wrapping_mul(0x9E37_79B1) ^ b.wrapping_mul(0x85EB_CA77);
    x = (x ^ (x >> 15)).wrapping_mul(0x2C1B_3C6D);
    x = (x ^ (x >> 12)).wrapping_mul(0x297A_2D39);
    x ^= x >> 15;
    (x >> 8) as f32 / 8_388_607.5 - 1.0
}
