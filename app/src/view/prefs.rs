//! What a person has settled once for every project, remembered from run to run.

use egui::{Context, ThemePreference};
use plumpline_core::{Unit, Units};
use serde::{Deserialize, Serialize};

use crate::kit::words::Language;

/// Smallest and largest text, percent of the usual.
pub const TEXT_PERCENT: (u16, u16) = (80, 200);
/// How far apart the sizes of text are that keys and buttons step through, percent.
const STEP: u16 = 5;
/// The largest window, points, in which things are drawn at their own size, and how much
/// larger they become at most in one that is larger still: there is nothing else to fill it with.
const ROOMY: egui::Vec2 = egui::vec2(1920.0, 1080.0);
const LARGEST: f32 = 2.0;
/// They grow by this at a time, so that a window that is being drawn wider does not shimmer.
const GROWTH: f32 = 0.25;

/// What is remembered from one run to the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Prefs {
    /// What menus, cards and notices are said in.
    pub language: Language,
    /// Light, dark, or as the desktop says.
    pub theme: ThemePreference,
    /// The unit of every length on screen.
    pub unit: Unit,
    /// Size of text and of all that holds it, percent; [`TEXT_PERCENT`].
    pub text_percent: u16,
    /// Whether letters, digits and signs are shortcuts by themselves; else they want Alt.
    pub single_keys: bool,
    /// Whether the board stands right of the bars: for a left hand, which would else lie over
    /// them.
    pub mirrored: bool,
    /// Whether nothing moves by itself.
    pub still: bool,
}

impl Default for Prefs {
    fn default() -> Self {
        Self {
            language: Language::English,
            theme: ThemePreference::System,
            unit: Unit::Mm,
            text_percent: 100,
            single_keys: true,
            mirrored: false,
            still: false,
        }
    }
}

impl Prefs {
    /// With text one step larger (1) or smaller (−1).
    #[must_use]
    pub fn stepped(self, way: i32) -> Self {
        let now = self.text_percent;
        let next = if way > 0 { now / STEP + 1 } else { now.div_ceil(STEP).saturating_sub(1) };
        let (low, high) = TEXT_PERCENT;
        Self { text_percent: (next * STEP).clamp(low, high), ..self }
    }

    /// With text at its usual size.
    #[must_use]
    pub fn at_usual_size(self) -> Self {
        Self { text_percent: 100, ..self }
    }

    /// The unit of lengths and the language of numbers.
    pub fn units(self) -> Units {
        Units { unit: self.unit, language: self.language }
    }

    /// How large everything is drawn, 1 being usual. What a file says is kept within reason.
    pub fn scale(self) -> f32 {
        let (low, high) = TEXT_PERCENT;
        f32::from(self.text_percent.clamp(low, high)) / 100.0
    }

    /// Makes a context show itself so, everything `larger` times as large.
    pub fn show(self, ctx: &Context, larger: f32) {
        crate::kit::words::speak(self.language);
        if ctx.options(|o| o.theme_preference) != self.theme {
            ctx.set_theme(self.theme);
        }
        let zoom = self.scale() * larger * in_room(roomy(ctx));
        if (ctx.zoom_factor() - zoom).abs() > 1e-4 {
            ctx.set_zoom_factor(zoom);
        }
        let moving = egui::Style::default();
        let (time, scroll) = if self.still {
            (0.0, egui::style::ScrollAnimation::none())
        } else {
            (moving.animation_time, moving.scroll_animation)
        };
        if ctx.global_style().animation_time != time {
            ctx.all_styles_mut(|style| {
                style.animation_time = time;
                style.scroll_animation = scroll;
            });
        }
    }
}

/// The window's size were nothing enlarged, points; where no desktop says how large the window
/// is, nothing is known of it.
fn roomy(ctx: &Context) -> Option<egui::Vec2> {
    let shown = ctx.input(|i| {
        let window = i.viewport();
        window.inner_rect.is_some() || window.monitor_size.is_some()
    });
    shown.then(|| ctx.content_rect().size() * ctx.zoom_factor())
}

/// How much larger things are drawn in a window of this size.
fn in_room(window: Option<egui::Vec2>) -> f32 {
    let Some(window) = window else { return 1.0 };
    let room = (window / ROOMY).min_elem();
    ((room / GROWTH).floor() * GROWTH).clamp(1.0, LARGEST)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_grows_and_shrinks_within_its_ends() {
        let mut prefs = Prefs::default();
        for _ in 0..20 {
            prefs = prefs.stepped(1);
        }
        assert_eq!(prefs.text_percent, TEXT_PERCENT.1);
        assert_eq!(prefs.stepped(1), prefs);
        for _ in 0..30 {
            prefs = prefs.stepped(-1);
        }
        assert_eq!(prefs.text_percent, TEXT_PERCENT.0);
        assert_eq!(Prefs::default().stepped(1).stepped(-1), Prefs::default());
        assert_eq!(prefs.at_usual_size(), Prefs::default());
        assert_eq!(Prefs { text_percent: 7, ..prefs }.scale(), 0.8);
    }

    #[test]
    fn text_steps_by_fives_whatever_it_was_before() {
        let at = |text_percent| Prefs { text_percent, ..Prefs::default() };
        assert_eq!(at(100).stepped(1), at(105));
        assert_eq!(at(112).stepped(1), at(115));
        assert_eq!(at(112).stepped(-1), at(110));
        let (mut prefs, mut steps) = (at(100), 0);
        while prefs.text_percent < 200 {
            (prefs, steps) = (prefs.stepped(1), steps + 1);
        }
        assert_eq!(steps, 20);
    }

    #[test]
    fn a_large_window_is_filled_and_a_usual_one_left_alone() {
        let sizes = [(1024.0, 700.0), (1440.0, 900.0), (1920.0, 1080.0), (2560.0, 1440.0)];
        let drawn = sizes.map(|(x, y)| in_room(Some(egui::vec2(x, y))));
        assert_eq!(drawn, [1.0, 1.0, 1.0, 1.25]);
        assert_eq!(in_room(Some(egui::vec2(3840.0, 2160.0))), 2.0);
        assert_eq!(in_room(Some(egui::vec2(7680.0, 2160.0))), 2.0);
        assert_eq!(in_room(None), 1.0);
    }

    #[test]
    fn prefs_of_an_older_run_are_read() {
        let old: Prefs = ron::from_str("(theme: Dark)").expect("prefs");
        assert_eq!(old, Prefs { theme: ThemePreference::Dark, ..Prefs::default() });
    }
}
