//! Every colour and measure of the studio, for both themes. Nothing else names a colour.

use egui::style::{WidgetVisuals, Widgets};
use egui::{Color32, CornerRadius, Stroke, Theme, Visuals};

use super::words::MessageKey;

/// Height of the top strip, points.
pub const STRIP: f32 = 56.0;
/// Gap between panels, points.
pub const GAP: f32 = 12.0;
/// Padding inside a panel, points.
pub const PAD: f32 = 16.0;
/// Corner radius of a panel.
pub const PANEL_RADIUS: f32 = 10.0;
/// Corner radius of cards and controls.
pub const CARD_RADIUS: f32 = 8.0;
/// Corner radius of pills and tags.
pub const TAG_RADIUS: f32 = 5.0;
/// Least side of anything that can be hit, points.
pub const HIT: f32 = 24.0;
/// Below this window width the figures fold into one line, points.
pub const NARROW: f32 = 1280.0;

/// The colours of one theme.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tokens {
    /// Whether this is the night theme.
    pub dark: bool,
    /// Window ground.
    pub background: Color32,
    /// Paper or mat surface.
    pub panel: Color32,
    /// Sunk cards and slider tracks.
    pub well: Color32,
    /// 5 mm board lines.
    pub grid: Color32,
    /// 10 mm board lines.
    pub grid2: Color32,
    /// Borders and rules.
    pub edge: Color32,
    /// Edge of anything that can be pressed; 3:1 on every ground.
    pub control_edge: Color32,
    /// The solid lower lip of panels and raised controls.
    pub edge_deep: Color32,
    /// Text.
    pub ink: Color32,
    /// Labels and hints.
    pub soft_ink: Color32,
    /// Wanted line, knots, dimensions, selected controls.
    pub outline: Color32,
    /// Stuffed body before yarn is mixed into it.
    pub forecast: Color32,
    /// Share of yarn mixed into the body.
    pub yarn_share: f32,
    /// Scalloped silhouette.
    pub forecast_edge: Color32,
    /// Light falling on the body.
    pub body_light: Color32,
    /// Shade on the body's far side.
    pub body_shade: Color32,
    /// Lines from board to bars.
    pub link: Color32,
    /// Selected round.
    pub highlight: Color32,
    /// Edge of every highlight.
    pub highlight_edge: Color32,
    /// Text in highlight colour.
    pub highlight_ink: Color32,
    /// Row or column behind the selected round.
    pub wash: Color32,
    /// Text on highlight.
    pub on_highlight: Color32,
    /// Increases.
    pub increase: Color32,
    /// Decreases.
    pub decrease: Color32,
    /// Warnings: triangle, hatch, words.
    pub warning: Color32,
    /// Ground of a callout.
    pub warn_wash: Color32,
    /// What a yarn is mixed with for its edge.
    pub yarn_edge: Color32,
    /// Share of that in a yarn's edge.
    pub yarn_edge_share: f32,
}

const fn hex(rgb: u32) -> Color32 {
    Color32::from_rgb((rgb >> 16) as u8, (rgb >> 8) as u8, rgb as u8)
}

/// Drafting paper by day.
pub const LIGHT: Tokens = Tokens {
    dark: false,
    background: hex(0xE7DDCA),
    panel: hex(0xFBF7EE),
    well: hex(0xF1E9D9),
    grid: hex(0xF1EADC),
    grid2: hex(0xE6DCC8),
    edge: hex(0xD3C6AC),
    control_edge: hex(0x8A7B5E),
    edge_deep: hex(0xBFAF8F),
    ink: hex(0x2C2823),
    soft_ink: hex(0x655B4F),
    outline: hex(0x2F3B4C),
    forecast: hex(0xDFCCAB),
    yarn_share: 0.54,
    forecast_edge: hex(0x94784E),
    body_light: hex(0xFFFFFF),
    body_shade: hex(0x2C2823),
    link: hex(0xCDBF9F),
    highlight: hex(0xF0AE2B),
    highlight_edge: hex(0x8F6200),
    highlight_ink: hex(0x6B4700),
    wash: hex(0xFCEBC4),
    on_highlight: hex(0x2C2823),
    increase: hex(0x55731C),
    decrease: hex(0x7B3F8C),
    warning: hex(0xA33A0C),
    warn_wash: hex(0xF9E1CF),
    yarn_edge: hex(0x000000),
    yarn_edge_share: 0.36,
};

/// A cutting mat by night.
pub const DARK: Tokens = Tokens {
    dark: true,
    background: hex(0x141917),
    panel: hex(0x202826),
    well: hex(0x19201E),
    grid: hex(0x252E2B),
    grid2: hex(0x2E3935),
    edge: hex(0x3B4743),
    control_edge: hex(0x7E8C86),
    edge_deep: hex(0x0B0E0D),
    ink: hex(0xF2EADB),
    soft_ink: hex(0xB4B6A7),
    outline: hex(0xEAF0F0),
    forecast: hex(0x837A63),
    yarn_share: 0.58,
    forecast_edge: hex(0xB6A580),
    body_light: hex(0xFFFFFF),
    body_shade: hex(0x0B0E0D),
    link: hex(0x4A5852),
    highlight: hex(0xF5B93B),
    highlight_edge: hex(0xF5B93B),
    highlight_ink: hex(0xF9CD70),
    wash: hex(0x453A20),
    on_highlight: hex(0x221C10),
    increase: hex(0xB3CB69),
    decrease: hex(0xD4A6E1),
    warning: hex(0xFF9E69),
    warn_wash: hex(0x47291B),
    yarn_edge: hex(0xFFFFFF),
    yarn_edge_share: 0.22,
};

/// House colours a yarn can take, by name. A yarn's colour is its owner's: it may be any
/// other too.
pub const PALETTE: [(MessageKey, [u8; 3]); 24] = [
    (message!("colour-madder"), [184, 86, 64]),
    (message!("colour-brick"), [142, 58, 48]),
    (message!("colour-rosehip"), [200, 66, 84]),
    (message!("colour-foxglove"), [196, 110, 150]),
    (message!("colour-plum"), [110, 62, 104]),
    (message!("colour-iris"), [98, 92, 158]),
    (message!("colour-dusk"), [70, 86, 126]),
    (message!("colour-slate"), [86, 102, 114]),
    (message!("colour-lagoon"), [62, 125, 138]),
    (message!("colour-spruce"), [44, 92, 82]),
    (message!("colour-fern"), [92, 130, 70]),
    (message!("colour-pistachio"), [160, 180, 112]),
    (message!("colour-quince"), [196, 172, 72]),
    (message!("colour-mustard"), [206, 150, 42]),
    (message!("colour-apricot"), [226, 148, 96]),
    (message!("colour-blush"), [230, 184, 164]),
    (message!("colour-oat"), [230, 210, 166]),
    (message!("colour-milk"), [244, 236, 220]),
    (message!("colour-sand"), [200, 178, 142]),
    (message!("colour-hazel"), [150, 112, 76]),
    (message!("colour-peat"), [92, 70, 54]),
    (message!("colour-char"), [52, 50, 50]),
    (message!("colour-ash"), [150, 148, 142]),
    (message!("colour-sky"), [140, 178, 202]),
];

impl Tokens {
    /// The tokens of a theme.
    pub const fn of(theme: Theme) -> &'static Self {
        match theme {
            Theme::Light => &LIGHT,
            Theme::Dark => &DARK,
        }
    }

    /// The tokens of the theme a context shows.
    pub fn now(ctx: &egui::Context) -> &'static Self {
        Self::of(ctx.theme())
    }

    /// A yarn's own colour; no theme tints it.
    pub fn yarn(colour: [u8; 3]) -> Color32 {
        Color32::from_rgb(colour[0], colour[1], colour[2])
    }

    /// The colour of a selected round where it is drawn as yarn.
    pub const fn lit_yarn(&self) -> [u8; 3] {
        [self.highlight.r(), self.highlight.g(), self.highlight.b()]
    }

    /// The edge drawn round a yarn.
    pub fn yarn_edge(&self, colour: [u8; 3]) -> Color32 {
        mix(Self::yarn(colour), self.yarn_edge, self.yarn_edge_share)
    }

    /// What parts one cell of a bar from the next: the yarn's edge, but never lighter than a
    /// light yarn, on which that would not show.
    pub fn cell_edge(&self, colour: [u8; 3]) -> Color32 {
        if Self::on_yarn(colour) == Color32::BLACK {
            mix(Self::yarn(colour), LIGHT.ink, 0.42)
        } else {
            self.yarn_edge(colour)
        }
    }

    /// The stuffed body in a yarn.
    pub fn body(&self, colour: [u8; 3]) -> Color32 {
        mix(self.forecast, Self::yarn(colour), self.yarn_share)
    }

    /// Whichever of white and black reads better on a yarn. Against any colour one of them
    /// stands out by 4.5:1; ink, being a little lighter than black, would not.
    pub fn on_yarn(colour: [u8; 3]) -> Color32 {
        let yarn = luminance(Self::yarn(colour));
        let (on_dark, on_pale) = (1.05 / (yarn + 0.05), (yarn + 0.05) / 0.05);
        if on_dark >= on_pale { Color32::WHITE } else { Color32::BLACK }
    }

    /// Soft ink of something that cannot be used now.
    pub fn disabled(&self) -> Color32 {
        mix(self.panel, self.soft_ink, 0.55)
    }

    /// egui's own widgets in these colours.
    pub fn visuals(&self) -> Visuals {
        let base = if self.dark { Visuals::dark() } else { Visuals::light() };
        Visuals {
            override_text_color: Some(self.ink),
            weak_text_color: Some(self.soft_ink),
            widgets: self.widgets(),
            selection: egui::style::Selection {
                bg_fill: self.wash,
                stroke: Stroke::new(1.0, self.ink),
            },
            hyperlink_color: self.outline,
            faint_bg_color: self.well,
            extreme_bg_color: self.well,
            text_edit_bg_color: Some(self.panel),
            code_bg_color: self.well,
            warn_fg_color: self.warning,
            error_fg_color: self.warning,
            window_corner_radius: CornerRadius::same(10),
            window_shadow: egui::Shadow::NONE,
            popup_shadow: egui::Shadow::NONE,
            window_fill: self.panel,
            window_stroke: Stroke::new(1.0, self.control_edge),
            menu_corner_radius: CornerRadius::same(8),
            panel_fill: self.background,
            // A caret that blinks would draw while nothing happens.
            text_cursor: egui::style::TextCursorStyle {
                stroke: Stroke::new(1.5, self.outline),
                blink: false,
                ..base.text_cursor.clone()
            },
            slider_trailing_fill: true,
            ..base
        }
    }

    fn widgets(&self) -> Widgets {
        let state = |fill: Color32, edge: Color32, width: f32| WidgetVisuals {
            bg_fill: fill,
            weak_bg_fill: fill,
            bg_stroke: Stroke::new(width, edge),
            corner_radius: CornerRadius::same(7),
            fg_stroke: Stroke::new(1.3, self.ink),
            expansion: 0.0,
        };
        Widgets {
            noninteractive: state(self.panel, self.edge, 1.0),
            inactive: state(self.panel, self.control_edge, 1.0),
            hovered: state(self.well, self.outline, 1.3),
            // The one that is pressed, or has the keyboard.
            active: state(self.wash, self.outline, 2.0),
            open: state(self.well, self.outline, 1.3),
        }
    }
}

/// `share` of `b` in `a`, sRGB values mixed as they stand.
pub fn mix(a: Color32, b: Color32, share: f32) -> Color32 {
    let channel = |a: u8, b: u8| {
        (f32::from(a) + (f32::from(b) - f32::from(a)) * share).round().clamp(0.0, 255.0) as u8
    };
    Color32::from_rgba_premultiplied(
        channel(a.r(), b.r()),
        channel(a.g(), b.g()),
        channel(a.b(), b.b()),
        channel(a.a(), b.a()),
    )
}

fn luminance(colour: Color32) -> f32 {
    let linear = |c: u8| {
        let c = f32::from(c) / 255.0;
        if c <= 0.040_45 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * linear(colour.r()) + 0.7152 * linear(colour.g()) + 0.0722 * linear(colour.b())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn contrast(a: Color32, b: Color32) -> f32 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    /// WCAG 2.2: text 4.5:1 (success criterion 1.4.3), what can be acted on and marks that
    /// mean something 3:1 (1.4.11).
    const TEXT: f32 = 4.5;
    const MARK: f32 = 3.0;

    fn reads(least: f32, front: &[(&str, Color32)], grounds: &[(&str, Color32)]) {
        for (name, colour) in front {
            for (ground_name, ground) in grounds {
                let got = contrast(*colour, *ground);
                assert!(got >= least, "{name} on {ground_name}: {got:.2}");
            }
        }
    }

    #[test]
    fn text_reads_on_every_ground_it_is_set_on() {
        for t in [&LIGHT, &DARK] {
            let paper = [("panel", t.panel), ("well", t.well)];
            let washes = [("wash", t.wash), ("warn_wash", t.warn_wash)];
            let all = [&paper[..], &washes, &[("background", t.background)]].concat();
            let inks = [("ink", t.ink), ("soft_ink", t.soft_ink), ("outline", t.outline)];
            reads(TEXT, &inks, &all);
            let others = [("decrease", t.decrease), ("warning", t.warning)];
            reads(TEXT, &others, &all);
            reads(TEXT, &[("highlight_ink", t.highlight_ink)], &all);
            reads(TEXT, &[("increase", t.increase)], &paper);
            reads(TEXT, &[("on_highlight", t.on_highlight)], &[("highlight", t.highlight)]);
        }
    }

    #[test]
    fn edges_and_marks_show_on_every_ground_they_are_drawn_on() {
        for t in [&LIGHT, &DARK] {
            let grounds = [
                ("panel", t.panel),
                ("well", t.well),
                ("background", t.background),
                ("wash", t.wash),
                ("warn_wash", t.warn_wash),
            ];
            let marks = [
                ("control_edge", t.control_edge),
                ("outline", t.outline),
                ("highlight_edge", t.highlight_edge),
                ("increase", t.increase),
                ("decrease", t.decrease),
                ("warning", t.warning),
            ];
            reads(MARK, &marks, &grounds);
        }
    }

    #[test]
    fn letters_read_on_any_yarn() {
        for r in (0..=255).step_by(15) {
            for g in (0..=255).step_by(15) {
                for b in (0..=255).step_by(15) {
                    let yarn = [r as u8, g as u8, b as u8];
                    let got = contrast(Tokens::on_yarn(yarn), Tokens::yarn(yarn));
                    assert!(got >= TEXT, "{yarn:?}: {got:.2}");
                }
            }
        }
    }
}
