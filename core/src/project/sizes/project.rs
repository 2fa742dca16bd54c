//! Sizes of whole projects: every piece at the size of one name, companions meeting again.

use crate::error::{Error, Result};
use crate::piece::{Piece, PieceId};
use crate::plan::{Plan, plan, rounds_of};
use crate::project::Project;
use crate::project::companion::{self, Side};
use crate::sentence::Sentence;

use super::{Resized, Size, SizeBy, sized_piece, sized_piece_from};

/// A project whose pieces are at the size of one name.
#[derive(Debug, Clone)]
pub struct AtSize {
    /// The project at that size; pieces without such a size are as they were.
    pub project: Project,
    /// What has to be said, of which piece.
    pub notes: Vec<(PieceId, Sentence)>,
    /// Each piece at that size in the project's order, where it has one, its seams met.
    pub made: Vec<Option<Resized>>,
}

/// The names of all sizes in `project`, each once, in the order of the pieces and their
/// tables.
pub fn size_names(project: &Project) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    for size in project.pieces.iter().flat_map(|p| &p.sizes) {
        if !names.contains(&size.name.as_str()) {
            names.push(&size.name);
        }
    }
    names
}

/// Pieces at sizes that are worked out at once, at most: each is scaled until its forecast
/// has the measure, which takes some thousandths of a second for each ten rounds.
pub const MOST_AT_SIZES: usize = 1000;
/// Where there are more than so many, their rounds come to this at most.
const FEW_AT_SIZES: usize = 160;
const MOST_ROUNDS_AT_SIZES: f64 = 60_000.0;

/// `project` at every one of its sizes, in the order of [`size_names`].
///
/// # Errors
/// Where that is more than [`MOST_AT_SIZES`] pieces in all, or many of many rounds; as
/// [`at_size`].
pub fn at_all_sizes(project: &Project) -> Result<Vec<AtSize>> {
    let names = size_names(project);
    let (sizes, pieces) = (names.len(), project.pieces.len());
    if sizes * pieces > MOST_AT_SIZES {
        return Err(Error::new(
            "sizes",
            format!("{pieces} pieces in {sizes} sizes are {} to work out", pieces * sizes),
            format!("at most {MOST_AT_SIZES} are at once: take out sizes or pieces"),
        ));
    }
    if sizes * pieces > FEW_AT_SIZES {
        let rounds: f64 = project.pieces.iter().map(rounds_at_sizes).sum();
        if rounds > MOST_ROUNDS_AT_SIZES {
            return Err(Error::new(
                "sizes",
                format!("{pieces} pieces in {sizes} sizes come to {rounds:.0} rounds"),
                format!(
                    "at most {MOST_ROUNDS_AT_SIZES} are worked out at once: take out sizes"
                ),
            ));
        }
    }
    // What every size of a piece is made from is planned once.
    let bases: Vec<Option<Plan>> =
        project.pieces.iter().map(|piece| plan(piece).ok()).collect();
    names.into_iter().map(|name| at_size_from(project, name, &bases)).collect()
}

/// About how many rounds `piece` has in all its sizes together.
fn rounds_at_sizes(piece: &Piece) -> f64 {
    let rounds = f64::from(rounds_of(piece));
    let (mut tall, mut wide) = (1e-3_f64, 1e-3_f64);
    for knot in &piece.outline.knots {
        tall = tall.max(knot.height_mm);
        wide = wide.max(2.0 * knot.radius_mm);
    }
    let times = piece.sizes.iter().map(|size| match size.by {
        SizeBy::Height(mm) => mm / tall,
        SizeBy::Width(mm) => mm / wide,
        SizeBy::Factor(factor) => factor,
        SizeBy::Gauge { .. } | SizeBy::Meet { .. } => 1.0,
    });
    rounds * times.sum::<f64>()
}

/// The piece `id` of `project` at `size`; one that meets a companion meets it at the size of
/// the same name, where the companion has one.
///
/// # Errors
/// As [`sized_piece`]; for a piece or a companion that is not there, a companion that has no
/// seam with the piece or cannot be met, with the reason.
pub fn sized(project: &Project, id: PieceId, size: &Size) -> Result<Resized> {
    sized_from(project, id, size, None)
}

/// As [`sized`]; `base` is the plan of the piece, where it is known.
fn sized_from(
    project: &Project,
    id: PieceId,
    size: &Size,
    base: Option<&Plan>,
) -> Result<Resized> {
    let piece = project.needed(id)?;
    match size.by {
        SizeBy::Meet { companion } => meet(project, id, companion, size, &mut vec![id]),
        _ => sized_piece_from(piece, size, base),
    }
    .map_err(|e| e.within(&format!("piece “{}”", piece.name)))
}

/// As [`sized`] for a size by companion; `waiting` are the pieces that wait for one another.
fn meet(
    project: &Project,
    id: PieceId,
    companion: PieceId,
    size: &Size,
    waiting: &mut Vec<PieceId>,
) -> Result<Resized> {
    let place = || format!("size “{}”", size.name);
    size.validate()?;
    let Some(other) = project.piece(companion).filter(|_| companion != id) else {
        let what = format!("there is no companion {companion}");
        return Err(Error::new(place(), what, "choose another piece of the project"));
    };
    let base_plan = plan(project.needed(id)?)?;
    let mut at = project.clone();
    let mut notes = Vec::new();
    if let Some(theirs) = other.sizes.iter().find(|s| s.name == size.name) {
        let made = match theirs.by {
            SizeBy::Meet { companion: next } => {
                if waiting.contains(&companion) {
                    let names: Vec<&str> =
                        waiting.iter().map(|&id| project.name_of(id)).collect();
                    return Err(Error::new(
                        place(),
                        format!("{} wait for one another", names.join(" and ")),
                        "give one of them a height, a width or a factor",
                    ));
                }
                waiting.push(companion);
                meet(project, companion, next, theirs, waiting)?
            }
            _ => sized_piece(other, theirs)?,
        };
        put(&mut at, companion, &made);
    }
    let shared: Vec<usize> =
        (0..at.seams.len()).filter(|&i| at.seams[i].joins(id, companion)).collect();
    if shared.is_empty() {
        return Err(Error::new(
            place(),
            format!("no seam joins it to “{}”", other.name),
            "say where the two meet first",
        ));
    }
    for i in shared {
        let seam = &mut at.seams[i];
        seam.moves = if seam.a.piece == id { Side::A } else { Side::B };
        let met = companion::meet_as(&at, i, size)?;
        notes.extend(met.changes.iter().map(|change| change.said.clone()));
        at = met.project;
    }
    let piece = at.needed(id)?.clone();
    let plan = plan(&piece)?;
    let base_rounds = base_plan.rounds.len() as u32;
    let scale = plan.size_mm.height / base_plan.size_mm.height;
    Ok(Resized { piece, plan, scale, base_rounds, wanted: None, notes })
}

/// Every piece of `project` at its size called `name`, its seams met again.
///
/// A seam that cannot be met at that size is named in the notes of both its pieces; it never
/// keeps the size from being made.
///
/// # Errors
/// Where no piece has a size of that name, listing those there are; and as [`sized`].
pub fn at_size(project: &Project, name: &str) -> Result<AtSize> {
    at_size_from(project, name, &[])
}

/// As [`at_size`]; `bases` are the plans of the pieces, as far as they are known.
fn at_size_from(project: &Project, name: &str, bases: &[Option<Plan>]) -> Result<AtSize> {
    let of_name = |piece: &Piece| piece.sizes.iter().find(|s| s.name == name).cloned();
    if project.pieces.iter().all(|piece| of_name(piece).is_none()) {
        let names = size_names(project);
        let mend = match names.is_empty() {
            true => "the project has no sizes yet".to_owned(),
            false => format!("the sizes are {}", names.join(", ")),
        };
        return Err(Error::new("sizes", format!("there is no size “{name}”"), mend));
    }
    let mut at = project.clone();
    let mut made = Vec::with_capacity(project.pieces.len());
    for (i, piece) in project.pieces.iter().enumerate() {
        let base = bases.get(i).and_then(Option::as_ref);
        let size = of_name(piece);
        let sized = size.map(|size| sized_from(project, piece.id, &size, base)).transpose()?;
        if let Some(sized) = &sized {
            put(&mut at, piece.id, sized);
        }
        made.push(sized);
    }
    let (at, seams) = companion::meet_all(&at);
    let mut notes = Vec::new();
    for (piece, made) in at.pieces.iter().zip(&mut made) {
        let Some(made) = made else { continue };
        if made.piece != *piece {
            made.plan = plan(piece)?;
            made.piece = piece.clone();
        }
        notes.extend(made.notes.iter().map(|note| (piece.id, note.clone())));
    }
    for (seam, said) in at.seams.iter().zip(seams) {
        for piece in [seam.a.piece, seam.b.piece] {
            notes.extend(said.iter().map(|text| (piece, text.clone())));
        }
    }
    Ok(AtSize { project: at, notes, made })
}

/// The piece `id` at its size `size`, its seams met as in [`at_size`] where it has any.
///
/// # Errors
/// As [`sized`].
pub(super) fn sized_and_met(project: &Project, id: PieceId, size: &Size) -> Result<Resized> {
    if !project.seams.iter().any(|seam| seam.touches(id)) {
        return sized(project, id, size);
    }
    let at = at_size(project, &size.name)?;
    let said = at.notes.into_iter().filter(|(piece, _)| *piece == id);
    let notes = said.map(|(_, note)| note).collect();
    let made = at.made.into_iter().flatten().find(|made| made.piece.id == id);
    match made {
        Some(made) => Ok(Resized { notes, ..made }),
        None => sized(project, id, size),
    }
}

/// A project with one piece at another size, or all of them in step.
#[derive(Debug, Clone)]
pub struct ResizedProject {
    /// The project, its seams met again as far as they can be.
    pub project: Project,
    /// The pieces that were sized and what they came to, before seams moved them.
    pub made: Vec<(PieceId, Resized)>,
    /// What was changed so that seams hold, how each stands, and which cannot, a sentence
    /// each.
    pub seams: Vec<Sentence>,
}

/// `project` with piece `only` at `size`; without it the first piece is at `size` and the
/// others are scaled in step with it (or worked at the same gauge). Seams are met again by
/// moving companions of the piece that was sized.
///
/// # Errors
/// As [`sized`], for the first piece that cannot be made.
pub fn resize(project: &Project, only: Option<PieceId>, size: &Size) -> Result<ResizedProject> {
    let first = only.or(project.pieces.first().map(|piece| piece.id)).unwrap_or_default();
    let mut made = vec![(first, sized(project, first, size)?)];
    if only.is_none() {
        let by = match size.by {
            SizeBy::Gauge { .. } => size.by,
            _ => SizeBy::Factor(made[0].1.scale),
        };
        let in_step = Size { by, ..size.clone() };
        for other in project.pieces.iter().skip(1) {
            made.push((other.id, sized(project, other.id, &in_step)?));
        }
    }
    let mut at = project.clone();
    for (id, made) in &made {
        put(&mut at, *id, made);
    }
    let mut seams = Vec::new();
    for i in 0..at.seams.len() {
        let moves = at.seams[i].moves;
        at.seams[i].moves = match only {
            Some(kept) if at.seams[i].a.piece == kept => Side::B,
            Some(kept) if at.seams[i].b.piece == kept => Side::A,
            _ => moves,
        };
        match companion::meet(&at, i) {
            Ok(met) => {
                at = met.project;
                seams.extend(met.changes.into_iter().map(|change| change.said));
                seams.push(met.report.sentence());
            }
            Err(e) => {
                seams.push(Sentence::note("seam_fails", [("why", (&*e.to_string()).into())]))
            }
        }
        at.seams[i].moves = moves;
    }
    Ok(ResizedProject { project: at, made, seams })
}

/// Puts the piece `id` of `project` at the size that was made of it; its seams and its parts of
/// the toy go with it. Nothing happens where it is not there.
pub fn put(project: &mut Project, id: PieceId, made: &Resized) {
    let Some(piece) = project.piece_mut(id) else { return };
    *piece = Piece { id, ..made.piece.clone() };
    companion::carry(&mut project.seams, id, made);
    project.toy.piece_scaled(id, made.scale);
}
