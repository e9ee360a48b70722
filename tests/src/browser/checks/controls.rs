//! The shape controls: each one re-solves, and a value that can't be made leaves the design as it was.

use anyhow::{Result, ensure};

use thirtyfour::prelude::*;

use super::{Place, Run, table::rising};
use crate::browser::{find::Role, page::Page};

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("arch height re-solves", slider_solves(place, "Arch height")).await;
    run.check("lower eye to edge re-solves", slider_solves(place, "Lower eye")).await;
    run.check("thickness re-solves", slider_solves(place, "Thickness")).await;
    run.check("what was typed stays when another slider moves at once", typed_value_stays(place)).await;
    run.check("what is put back or undone in haste is as it was", hasty_change_is_undone(place)).await;
    run.check("an impossible value is refused in words and the design stays", impossible_value_is_refused(place)).await;
}

async fn slider_solves(place: &Place<'_>, name: &str) -> Result<()> {
    let page = place.still_page().await?;
    let before = page.hertz().await?;
    move_slider(&page, name).await?;
    let after = page.hertz().await?;
    ensure!(after.len() == before.len(), "{} modes became {}", before.len(), after.len());
    ensure!(rising(&after), "frequencies out of order: {after:?}");
    page.without_errors().await
}

/// Moves a slider by keyboard and waits for the figures of the standard mesh to change.
pub(super) async fn move_slider(page: &Page<'_>, name: &str) -> Result<()> {
    let before = page.hertz().await?;
    page.push_slider(name).await?;
    page.figures_changed_from(&before).await
}

/// In one task of the page, so that the typed value can't have been tried yet: twice the slider moves, then it is let go.
const TYPED_AND_SLID: &str = "const [number, slider] = arguments;
    const says = (field, ...events) => events.forEach((event) => field.dispatchEvent(new Event(event)));
    number.value = '3.4';
    says(number, 'change');
    slider.valueAsNumber += 1;
    says(slider, 'input');
    slider.valueAsNumber += 1;
    says(slider, 'input');
    setTimeout(() => says(slider, 'change'), 300);";

async fn typed_value_stays(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let (before, height) = (page.hertz().await?, page.number("Arch height").await?.parse::<f64>()?);
    let fields = [page.find(Role::Number, "Thickness").await?, page.find(Role::Slider, "Arch height").await?];
    let fields = fields.iter().map(WebElement::to_json).collect::<Result<Vec<_>, _>>()?;
    page.session.driver.execute(TYPED_AND_SLID, fields).await?;
    page.figures_changed_from(&before).await?;
    for (name, wanted) in [("Thickness", 3.4), ("Arch height", height + 2.0)] {
        let shown: f64 = page.number(name).await?.parse()?;
        ensure!((shown - wanted).abs() < 1e-9, "{name} is {shown}, not {wanted}");
    }
    page.without_errors().await
}

/// In one task of the page, so that the first value can't have been tried yet; or as soon as it is a step, while it is solved.
const TYPED_AND_BACK: &str = "const [number, back] = arguments;
    const before = number.value;
    const type = (value) => { number.value = value; number.dispatchEvent(new Event('change')); };
    const undo = () => document.dispatchEvent(new KeyboardEvent('keydown', { key: 'z', ctrlKey: true }));
    const button = document.querySelector('#undo');
    type('3.4');
    if (back === 'typed at once') type(before);
    else if (back === 'undone at once') undo();
    else new MutationObserver((_, observer) => {
        if (button.ariaDisabled === 'true') return;
        observer.disconnect();
        undo();
    }).observe(button, { attributeFilter: ['aria-disabled'] });";

const SOLVED: &str = "performance.getEntriesByName('bombatura:standard-modes').length";

async fn hasty_change_is_undone(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let (hertz, thickness) = (page.hertz().await?, page.number("Thickness").await?);
    for back in ["typed at once", "undone at once", "undone as it is solved"] {
        let field = page.find(Role::Number, "Thickness").await?.to_json()?;
        let solved = page.value(&format!("return {SOLVED};")).await?;
        page.session.driver.execute(TYPED_AND_BACK, vec![field, back.into()]).await?;
        page.until("the top is solved anew", &format!("{SOLVED} > {solved}")).await?;
        page.settle().await?;
        let shown = page.number("Thickness").await?;
        ensure!(shown == thickness, "thickness was {thickness}, then 3.4, {back}, and is {shown}");
        ensure!(page.hertz().await? == hertz, "{back} it leaves other figures");
        let steps = page.find(Role::Button, "Undo").await?.attr("aria-disabled").await?;
        ensure!(steps.as_deref() == Some("true"), "{back} it leaves a step");
    }
    page.without_errors().await
}

async fn impossible_value_is_refused(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let (before, value) = (page.hertz().await?, page.number("Thickness").await?);
    page.type_number("Thickness", "0").await?;
    let words = page.alert().await?;
    ensure!(words.contains('0') && words.contains("mm"), "the message gives neither value nor limit: {words}");
    // While the field is worked on it keeps what was typed, to be mended; left, it shows the design's value.
    page.session.driver.active_element().await?.send_keys(Key::Tab).await?;
    page.settle().await?;
    let shown = page.number("Thickness").await?;
    ensure!(shown == value, "thickness went from {value} to {shown}");
    ensure!(page.hertz().await? == before, "the figures changed");
    page.without_errors().await
}
