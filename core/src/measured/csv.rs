//! Heights as tables: x,y,z points, a grid, or cross-arch readings.

use super::{LengthUnit, MeasuredError, Reading, check_count, unit::check_span};
use crate::outline::Outline;

/// Reads heights from text. Cells are parted by commas, semicolons (decimal commas are then understood) or tabs. Three forms:
///
/// - three columns x, y, z, with or without a line of headings;
/// - a grid: the first line holds one coordinate, the first column the other; the coordinate with negative values is x,
///   failing that the shorter one; empty cells are places not measured;
/// - cross-arch readings: the first column is x, the others are headed by the five stations' names, for which the
///   outline gives the stations.
///
/// # Errors
/// [`MeasuredError`] with line and column of what can't be read; too few or too many points; readings that look like inches and
/// weren't said to be.
pub fn read_csv(text: &str, outline: &Outline, unit: LengthUnit) -> Result<Vec<Reading>, MeasuredError> {
    let table = Table::new(text);
    let headings = table.headings();
    let mut readings = if headings.len() < 3 {
        return Err(MeasuredError::NotATable { detail: format!("{} columns in the first line", headings.len()) });
    } else if headings.len() == 3 && headings[1..].iter().all(|cell| named_station(cell, outline).is_none()) {
        let has_headings = headings.iter().any(|cell| table.number(cell).is_none());
        table.rows(has_headings)?
    } else {
        let stations = headings[1..].iter().enumerate().map(|(index, cell)| {
            // Stations known from the outline are millimetres whatever the readings are.
            let named = || named_station(cell, outline).map(|station| station / unit.in_mm());
            table.number(cell).or_else(named).ok_or_else(|| MeasuredError::NotANumber {
                line: 1,
                column: index + 2,
                found: cell.chars().take(40).collect(),
            })
        });
        let stations = stations.collect::<Result<Vec<_>, _>>()?;
        let named = headings[1..].iter().all(|cell| table.number(cell).is_none());
        grid(&table, &stations, named)?
    };
    check_count(readings.len())?;
    unit.to_mm(&mut readings);
    if unit == LengthUnit::Unsaid {
        check_span(&readings, outline.measures().lower_width_mm)?;
    }
    Ok(readings)
}

fn named_station(name: &str, outline: &Outline) -> Option<f64> {
    let wanted = name.to_lowercase().replace([' ', '-'], "_");
    let stations = outline.measures().named_stations_mm();
    stations.into_iter().find(|(name, _)| *name == wanted).map(|(_, station_mm)| station_mm)
}

/// A text of lines and cells.
pub(super) struct Table<'text> {
    text: &'text str,
    /// Between cells.
    separator: char,
}

impl<'text> Table<'text> {
    /// A byte order mark, which some programs write, is no part of the first cell.
    pub(super) fn new(text: &'text str) -> Table<'text> {
        let text = text.trim_start_matches('\u{feff}');
        let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
        Table { text, separator: [';', '\t'].into_iter().find(|&c| first.contains(c)).unwrap_or(',') }
    }

    /// Lines with something on them, numbered from 0.
    pub(super) fn lines(&self) -> impl Iterator<Item = (usize, &'text str)> {
        self.text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty())
    }

    /// The cells of the first line.
    pub(super) fn headings(&self) -> Vec<&'text str> {
        let first = self.lines().next().map(|(_, line)| line).unwrap_or_default();
        first.split(self.separator).map(str::trim).collect()
    }

    /// `NaN` and `inf` are numbers here, so that they are named as such later.
    pub(super) fn number(&self, cell: &str) -> Option<f64> {
        if self.separator != ',' && cell.contains(',') {
            cell.replace(',', ".").parse().ok()
        } else {
            cell.parse().ok()
        }
    }

    /// The number in a cell; line and column from 0.
    pub(super) fn number_at(&self, cell: &str, line: usize, column: usize) -> Result<f64, MeasuredError> {
        let cell = cell.trim();
        self.number(cell).ok_or_else(|| MeasuredError::NotANumber {
            line: line + 1,
            column: column + 1,
            found: cell.chars().take(40).collect(),
        })
    }

    /// The numbers in the first columns of every line, but for the line of headings where there is one; what stands in further
    /// columns is left alone.
    pub(super) fn rows<const COLUMNS: usize>(&self, has_headings: bool) -> Result<Vec<[f64; COLUMNS]>, MeasuredError> {
        let mut rows = Vec::new();
        for (index, line) in self.lines().skip(usize::from(has_headings)) {
            let mut row = [0.0; COLUMNS];
            let mut cells = line.split(self.separator);
            for (column, value) in row.iter_mut().enumerate() {
                *value = self.number_at(cells.next().unwrap_or_default(), index, column)?;
            }
            push(&mut rows, row)?;
        }
        Ok(rows)
    }
}

fn grid(table: &Table, along: &[f64], named: bool) -> Result<Vec<Reading>, MeasuredError> {
    // (first column, first line, height)
    let mut cells = Vec::new();
    for (index, line) in table.lines().skip(1) {
        let mut parts = line.split(table.separator).map(str::trim);
        let side = table.number_at(parts.next().unwrap_or_default(), index, 0)?;
        for (column, (cell, &at)) in parts.zip(along).enumerate() {
            if !cell.is_empty() {
                push(&mut cells, [side, at, table.number_at(cell, index, column + 1)?])?;
            }
        }
    }
    let range = |k: usize| {
        let values = cells.iter().map(|cell: &Reading| cell[k]);
        (values.clone().fold(f64::INFINITY, f64::min), values.fold(f64::NEG_INFINITY, f64::max))
    };
    let ((side_low, side_high), (along_low, along_high)) = (range(0), range(1));
    let side_is_x = named
        || match (side_low < 0.0, along_low < 0.0) {
            (true, false) => true,
            (false, true) => false,
            _ => side_high - side_low <= along_high - along_low,
        };
    if !side_is_x {
        cells.iter_mut().for_each(|cell| cell.swap(0, 1));
    }
    Ok(cells)
}

fn push<const COLUMNS: usize>(
    readings: &mut Vec<[f64; COLUMNS]>,
    reading: [f64; COLUMNS],
) -> Result<(), MeasuredError> {
    if !reading.iter().all(|value| value.is_finite()) {
        return Err(MeasuredError::NotFinite { index: readings.len() + 1 });
    }
    // Told before memory runs out, not after.
    if readings.len() >= super::MOST_POINTS {
        return Err(MeasuredError::TooMany { count: readings.len() + 1, most: super::MOST_POINTS });
    }
    readings.push(reading);
    Ok(())
}
