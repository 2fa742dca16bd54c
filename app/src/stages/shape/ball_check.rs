//! A gauge checked by a ball that was made: what this gauge forecasts for it, and which round
//! height would agree.

use egui::{DragValue, Rect, Ui, pos2, vec2};
use plumpline_core::Extent;
use plumpline_core::plan::ball::{BallSize, TradeBall};
use plumpline_core::{Firmness, Gauge, Piece};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::fields::{form, length_field};
use crate::view::MadeBall;
use crate::view::look::Look;

/// What the ball was forecast from.
#[derive(Debug, Clone, Copy, PartialEq)]
struct ForecastFrom {
    made: MadeBall,
    gauge: Gauge,
    along: f64,
    firmness: Firmness,
}

/// What this gauge forecasts for the ball, and the round height that would agree, mm.
#[derive(Debug, Clone, PartialEq)]
struct Check {
    forecast: BallSize,
    agrees_mm: Option<Result<f64, String>>,
}

impl ForecastFrom {
    fn of(piece: &Piece, made: MadeBall) -> Self {
        Self {
            made,
            gauge: piece.gauge,
            along: piece.stiffness_along,
            firmness: piece.firmness,
        }
    }

    fn check(self) -> Result<Check, String> {
        let Self { made: MadeBall { ball, size_mm }, gauge, along, firmness } = self;
        let forecast = ball.size(gauge, along, firmness).map_err(|e| e.to_string())?;
        let agrees_mm = size_mm.map(|Extent { height, width }| {
            ball.round_height_for(height / width, gauge, along, firmness)
                .map_err(|e| e.to_string())
        });
        Ok(Check { forecast, agrees_mm })
    }
}

/// The fields of the ball, and what follows from them.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let piece = bench.document.piece();
    let mut made = bench.view.ball;
    form::remark(ui, say!("ball-increase-by-6-from-a-ring-of-6-work"));
    worked(ui, &mut made.ball, actions);
    let check = remembered(ui, ForecastFrom::of(piece, made));
    let forecast = check.as_ref().ok().map(|c| c.forecast);
    measured(ui, bench, &mut made, forecast, actions);
    if made != bench.view.ball {
        actions.look(Look::Ball(made));
    }
    match check {
        Err(error) => form::remark(ui, &format!("{error}.")),
        Ok(check) => outcome(ui, bench, made, &check, actions),
    }
}

/// Two fields on one line.
fn halves(ui: &mut Ui) -> [Rect; 2] {
    let size = vec2(ui.available_width(), form::ROW);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let half = 0.5 * rect.width();
    [0.0, half].map(|x| {
        Rect::from_min_size(
            pos2(rect.left() + x, rect.center().y - 13.0),
            vec2(half - 6.0, 26.0),
        )
    })
}

fn worked(ui: &mut Ui, ball: &mut TradeBall, actions: &mut Actions) {
    let [left, right] = halves(ui);
    let mut sixes = ball.stitches / 6;
    let around = DragValue::new(&mut sixes)
        .range(2..=100)
        .speed(0.05)
        .custom_formatter(|v, _| say!("ball-stitches-around", n = format!("{:.0}", 6.0 * v)))
        .custom_parser(|text| {
            let digits: String = text.chars().take_while(char::is_ascii_digit).collect();
            digits.parse::<f64>().ok().map(|n| n / 6.0)
        });
    if form::field(ui, left, say!("ball-ball-stitches-around"), around, actions).changed() {
        *ball = TradeBall { stitches: 6 * sixes, ..*ball };
    }
    let even = DragValue::new(&mut ball.even)
        .range(0..=200)
        .speed(0.05)
        .suffix(format!(" {}", say!("ball-even-rounds")));
    form::field(ui, right, say!("ball-even-rounds-name"), even, actions);
}

/// Its height and width; where they have not been measured, those that are forecast.
fn measured(
    ui: &mut Ui,
    bench: &Bench<'_>,
    made: &mut MadeBall,
    forecast: Option<BallSize>,
    actions: &mut Actions,
) {
    let Some(forecast) = forecast else { return };
    let forecast = Extent { height: forecast.height_mm, width: forecast.width_mm };
    let Extent { height: high, width: wide } = made.size_mm.unwrap_or(forecast);
    let range = || 5.0..=2000.0;
    let rect = form::row(
        ui,
        say!("ball-measured-height"),
        say!("ball-from-the-ring-to-the-close-with-the"),
    );
    let place = form::place(rect, 0.0, 86.0);
    let new_high = length_field::show(
        ui,
        place,
        say!("ball-ball-height"),
        (high, bench.unit()),
        range(),
        actions,
    );
    let rect = form::row(ui, say!("ball-measured-width"), say!("ball-across-the-even-rounds"));
    let place = form::place(rect, 0.0, 86.0);
    let new_wide = length_field::show(
        ui,
        place,
        say!("ball-ball-width"),
        (wide, bench.unit()),
        range(),
        actions,
    );
    if new_high.is_some() || new_wide.is_some() {
        let (height, width) = (new_high.unwrap_or(high), new_wide.unwrap_or(wide));
        made.size_mm = Some(Extent { height, width });
    }
}

fn outcome(
    ui: &mut Ui,
    bench: &Bench<'_>,
    made: MadeBall,
    check: &Check,
    actions: &mut Actions,
) {
    let (unit, gauge) = (bench.unit(), bench.document.piece().gauge);
    let BallSize { height_mm, width_mm } = check.forecast;
    let forecast = say!(
        "ball-this-gauge-forecasts-height-width-high",
        height = unit.number(height_mm),
        width = unit.text(width_mm)
    );
    let now_mm = gauge.round_height_mm();
    let agrees = match (&check.agrees_mm, made.size_mm) {
        (Some(Ok(mm)), Some(_)) => *mm,
        (Some(Err(error)), _) => return form::remark(ui, &format!("{forecast} {error}.")),
        _ => {
            return form::remark(
                ui,
                &say!("ball-forecast-measure-yours-and-type-both", forecast = forecast),
            );
        }
    };
    if (agrees / now_mm - 1.0).abs() < NEAR {
        return form::remark(
            ui,
            &say!("ball-forecast-yours-agrees-with-this-round", forecast = forecast),
        );
    }
    let words = say!(
        "ball-forecast-yours-has-the-shape-of-rounds",
        forecast = forecast,
        agrees = unit.text(agrees),
        now = unit.text(now_mm)
    );
    form::remark(ui, &words);
    let rounds = (100.0 * gauge.along_mm / agrees).round() / 100.0;
    let words = say!(
        "ball-use-rounds-rounds-to-length",
        rounds = form::short(rounds),
        length = unit.text(gauge.along_mm)
    );
    if form::wide(ui, form::ROW, &words, true, false).clicked() {
        actions.edit(Edit::Gauge(Gauge { rounds, ..gauge }));
    }
}

/// How near two round heights are the same: about what a swatch is counted to.
const NEAR: f64 = 0.01;

/// The answer to what was asked last, found once and not in every frame.
fn remembered(ui: &Ui, asked: ForecastFrom) -> Result<Check, String> {
    let kept = egui::Id::unique("ball check");
    type KeptBall = (ForecastFrom, Result<Check, String>);
    if let Some((_, check)) = ui.data(|d| d.get_temp::<KeptBall>(kept)).filter(|k| k.0 == asked)
    {
        return check;
    }
    let check = asked.check();
    ui.data_mut(|d| d.insert_temp::<KeptBall>(kept, (asked, check.clone())));
    check
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;

    #[test]
    fn a_ball_as_forecast_agrees_and_a_flatter_one_wants_lower_rounds() {
        let piece = Document::blank().piece().clone();
        let mut made = MadeBall::default();
        let check = ForecastFrom::of(&piece, made).check().expect("a ball");
        assert_eq!(check.agrees_mm, None, "nothing was measured");
        let BallSize { height_mm, width_mm } = check.forecast;
        let now = piece.gauge.round_height_mm();
        let mut agrees = |height| {
            made.size_mm = Some(Extent { height, width: width_mm });
            let check = ForecastFrom::of(&piece, made).check().expect("a ball");
            check.agrees_mm.expect("measured").expect("a height")
        };
        assert!((agrees(height_mm) / now - 1.0).abs() < NEAR);
        let flatter = agrees(0.9 * height_mm) / now;
        assert!((0.92..0.97).contains(&flatter), "{flatter}: about half of a tenth");
    }
}
