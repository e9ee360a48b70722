//! Measured files: read, shown with their fit, put right, taken over, and refused with the design as it was.

use std::fmt::Write as _;

use anyhow::{Result, ensure};
use bombatura_core::{arching::Arching, design::Design, design::Preset, outline::Outline, surface::Surface};

use super::drawings::{LOWER_BOUT, slider};
use super::files::save;
use super::{Place, Run};
use crate::browser::find::Role;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("a measured outline is shown with its fit and taken over", outline_is_taken_over(place)).await;
    run.check("five readings in inches are asked about and taken over", readings_are_taken_over(place)).await;
    run.check("a scan is laid by itself and put right", scan_is_laid_and_put_right(place)).await;
    run.check("bad measured files are refused and the design stays", bad_files_are_refused(place)).await;
}

const SECTION: &str = "Read a measured top";
const OUTLINE: &str = "Points (CSV) or a drawing";
const HEIGHTS: &str = "Table (CSV) or scan";

/// A viola's outline as a table, then in a drawing in centimetres, inside a turned group beside a smaller path.
async fn outline_is_taken_over(place: &Place<'_>) -> Result<()> {
    let viola = Preset::of_word("viola").map(|preset| preset.design().outline).unwrap_or(Design::demo().outline);
    let points = Outline::new(&viola)?.polyline(0.05);
    let table: String = points.iter().map(|[x, y]| format!("{:.3};{:.3}\n", 500.0 - y, x)).collect();
    let mut path = String::from("M");
    for [x, y] in points {
        write!(path, "{:.4} {:.4} ", x / 10.0, -y / 10.0)?;
    }
    let svg = format!(
        "<svg xmlns='http://www.w3.org/2000/svg' width='60cm' height='60cm' viewBox='0 0 60 60'>\
         <g transform='translate(30 50) rotate(20)'><path d='M0 0h2v2z'/><path d='{path}Z'/></g></svg>"
    );
    let page = place.still_page().await?;
    let hertz = page.hertz().await?;
    page.open_section(SECTION).await?;
    let folder = tempfile::tempdir()?;
    for (name, text) in [("outline.csv", table), ("outline.svg", svg)] {
        std::fs::write(folder.path().join(name), text)?;
        page.give(OUTLINE, &folder.path().join(name)).await?;
        page.until("the fit is told", &says("Everywhere within 0.5 mm")).await?;
        ensure!(page.hertz().await? == hertz, "{name}: reading alone changed the figures");
        let shown = "document.querySelector('.fit .near')?.getAttribute('d').length > 1000";
        page.until("the points are shown", shown).await?;
    }
    page.in_sight(Role::Button, "Take it over").await?.click().await?;
    page.until("the drawing is the viola's", &format!("Math.abs({}?.ariaValueNow - 236) < 0.1", slider(LOWER_BOUT)))
        .await?;
    page.figures_changed_from(&hertz).await?;
    page.press("Undo").await?;
    page.until("one step takes it back", &format!("{}?.ariaValueNow == 206", slider(LOWER_BOUT))).await?;
    page.without_errors().await
}

async fn readings_are_taken_over(place: &Place<'_>) -> Result<()> {
    let mut known = Design::demo();
    known.arching.apex_height_mm = 16.3;
    let (outline, surface) = drawn(&known)?;
    let m = &known.outline;
    let mut table = String::from("x,upper bout,upper corners,waist,lower corners,lower bout\n");
    for x in (-104..=104).step_by(4).map(f64::from) {
        write!(table, "{:.4}", x / 25.4)?;
        for y in [
            m.upper_station_mm,
            m.upper_corner.station_mm,
            m.waist_station_mm,
            m.lower_corner.station_mm,
            m.lower_station_mm,
        ] {
            match outline.contains([x, y]) {
                true => write!(table, ",{:.4}", surface.height_mm([x, y]) / 25.4)?,
                false => table.push(','),
            }
        }
        table.push('\n');
    }
    let page = place.still_page().await?;
    let hertz = page.hertz().await?;
    page.open_section(SECTION).await?;
    let folder = tempfile::tempdir()?;
    let file = folder.path().join("gauge.csv");
    std::fs::write(&file, table)?;
    page.give(HEIGHTS, &file).await?;
    page.until("inches are asked about", &says("in inches that is")).await?;
    page.in_sight(Role::Button, "Inches").await?.click().await?;
    page.until("the fit is told", &says("No outliers")).await?;
    page.in_sight(Role::Button, "Take it over").await?.click().await?;
    page.figures_changed_from(&hertz).await?;
    let design = save(&page, folder.path()).await?;
    let apex = design["arching"]["apex_height_mm"].as_f64().unwrap_or_default();
    ensure!((apex - 16.3).abs() < 0.05, "an apex of 16.3 mm was read as {apex}");
    page.without_errors().await
}

async fn scan_is_laid_and_put_right(place: &Place<'_>) -> Result<()> {
    let (outline, surface) = drawn(&Design::demo())?;
    let page = place.still_page().await?;
    let hertz = page.hertz().await?;
    page.open_section(SECTION).await?;
    let folder = tempfile::tempdir()?;
    let file = folder.path().join("scan.stl");
    std::fs::write(&file, stl(&outline, &surface))?;
    page.give(HEIGHTS, &file).await?;
    page.until("what is missing is told", &says("No part of the top is missing")).await?;
    page.until("it lies well", &says("No outliers")).await?;
    // Laid end for end most of it falls off the outline: refused, and to be put right from there.
    page.tick("Neck end and bottom are exchanged").await?;
    let words = page.alert().await?;
    ensure!(words.contains("outline") || words.contains("missing"), "{words}");
    page.press("Close").await?;
    page.tick("Neck end and bottom are exchanged").await?;
    page.until("it lies well again", &format!("{} && !({})", says("No outliers"), says("Reading"))).await?;
    page.in_sight(Role::Number, "Shift upwards").await?;
    page.type_number("Shift upwards", "0.5").await?;
    page.until("it is read again", &format!("{} && !({})", says("is read"), says("Reading"))).await?;
    let has_focus = "document.activeElement.ariaLabel?.startsWith('Shift upwards')";
    page.until("the field that was changed has the focus still", has_focus).await?;
    ensure!(page.hertz().await? == hertz, "reading alone changed the figures");
    page.in_sight(Role::Button, "Take it over").await?.click().await?;
    page.figures_changed_from(&hertz).await?;
    let design = save(&page, folder.path()).await?;
    let apex = design["arching"]["apex_height_mm"].as_f64().unwrap_or_default();
    ensure!((apex - 16.0).abs() < 0.05, "15.5 mm lifted by 0.5 mm was read as {apex}");
    page.without_errors().await
}

async fn bad_files_are_refused(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let hertz = page.hertz().await?;
    page.open_section(SECTION).await?;
    let folder = tempfile::tempdir()?;
    let rows = "0,10,1\n".repeat(30);
    for (chooser, name, text, named) in [
        (OUTLINE, "three.csv", "0,0\n50,100\n0,355\n".to_owned(), "3 points"),
        (OUTLINE, "empty.svg", "<svg xmlns='http://www.w3.org/2000/svg'/>".into(), "no path"),
        (OUTLINE, "letter.csv", "Dear maker".into(), "columns x and y"),
        (HEIGHTS, "three.csv", "0,0,1\n5,5,1\n9,9,1\n".into(), "3 points"),
        (HEIGHTS, "nan.csv", format!("{rows}0,20,NaN\n"), "point 31"),
        (HEIGHTS, "word.csv", format!("{rows}0,20,high\n"), "line 31, column 3"),
        (HEIGHTS, "cut.stl", "solid top\n facet\n".into(), "STL"),
    ] {
        let file = folder.path().join(name);
        std::fs::write(&file, text)?;
        page.give(chooser, &file).await?;
        let words = page.alert().await?;
        ensure!(words.to_lowercase().contains(&named.to_lowercase()), "{name}: no “{named}” in: {words}");
        ensure!(page.hertz().await? == hertz, "{name} changed the figures");
        page.press("Close").await?;
    }
    page.without_errors().await
}

fn drawn(design: &Design) -> Result<(Outline, Surface)> {
    let outline = Outline::new(&design.outline)?;
    let surface = Surface::new(&Arching::new(&design.arching, &outline)?, &outline);
    Ok((outline, surface))
}

/// A binary STL scan of a top lying on its side, its rim in slivers.
fn stl(outline: &Outline, surface: &Surface) -> Vec<u8> {
    let at = |i: i32, j: i32| {
        let p = [3.0 * f64::from(i), 3.0 * f64::from(j)];
        outline.contains(p).then(|| [p[0], p[1], surface.height_mm(p)])
    };
    let mut triangles = Vec::new();
    for j in 0..119 {
        for i in -35..35 {
            if let (Some(a), Some(b), Some(c)) = (at(i, j), at(i + 1, j), at(i, j + 1)) {
                triangles.push([a, b, c]);
            }
        }
    }
    triangles.extend(outline.polyline(0.005).into_iter().map(|p| [[p[0], p[1], surface.height_mm(p)]; 3]));
    let mut bytes = vec![b' '; 80];
    bytes.extend((triangles.len() as u32).to_le_bytes());
    for triangle in triangles {
        bytes.extend([0; 12]);
        for [x, y, z] in triangle {
            bytes.extend([z + 40.0, x, y - 900.0].iter().flat_map(|&value| (value as f32).to_le_bytes()));
        }
        bytes.extend([0; 2]);
    }
    bytes
}

/// An expression that holds when the region of what was read contains these words.
fn says(words: &str) -> String {
    format!("document.querySelector('[role=region][aria-label=\"What was read\"]')?.innerText.includes({words:?})")
}
