//! What a person has settled once for every project, remembered from run to run.

use egui::{Context, ThemePreference};
use plumpline_core::Unit;
use serde::{Deserialize, Serialize};

use crate::kit::words::Language;

/// Smallest and largest text, percent of the usual.
pub const TEXT_PERCENT: (u16, u16) = (80, 200);
/// Sizes of text that the keys and buttons step through, percent.
const STEPS: [u16; 9] = [80, 90, 100, 110, 125, 140, 150, 175, 200];

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
        let next = if way > 0 {
            STEPS.into_iter().find(|&s| s > now)
        } else {
            STEPS.into_iter().rev().find(|&s| s < now)
        };
        Self { text_percent: next.unwrap_or(now), ..self }
    }

    /// With text at its usual size.
    #[must_use]
    pub fn at_usual_size(self) -> Self {
        Self { text_percent: 100, ..self }
    }

    /// How large everything is drawn, 1 being usual. What a file says is kept within reason.
    pub fn scale(self) -> f32 {
        let (low, high) = TEXT_PERCENT;
        f32::from(self.text_percent.clamp(low, high)) / 100.0
    }

    /// Makes a context show itself so.
    pub fn show(self, ctx: &Context) {
        self.language.speak();
        if ctx.options(|o| o.theme_preference) != self.theme {
            ctx.set_theme(self.theme);
        }
        if (ctx.zoom_factor() - self.scale()).abs() > 1e-4 {
            ctx.set_zoom_factor(self.scale());
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
        for _ in 0..20 {
            prefs = prefs.stepped(-1);
        }
        assert_eq!(prefs.text_percent, TEXT_PERCENT.0);
        assert_eq!(Prefs::default().stepped(1).stepped(-1), Prefs::default());
        assert_eq!(prefs.at_usual_size(), Prefs::default());
        assert_eq!(Prefs { text_percent: 7, ..prefs }.scale(), 0.8);
    }

    #[test]
    fn prefs_of_an_older_run_are_read() {
        let old: Prefs = ron::from_str("(theme: Dark)").expect("prefs");
        assert_eq!(old, Prefs { theme: ThemePreference::Dark, ..Prefs::default() });
    }
}
