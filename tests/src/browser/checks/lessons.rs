//! Lessons: gone through by keyboard, a teacher's own, shown big; and the person's own design after all of it.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use thirtyfour::prelude::*;

use super::access::{judge, load_axe};
use super::files::with;
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::{DESKTOP, PHONE, Page};

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("lessons: one is gone through by keyboard, wrong and right", gone_through_by_keyboard(place)).await;
    run.check("lessons: a teacher's own is opened, a bad one refused", teachers_own_is_opened(place)).await;
    run.check("lessons: shown big, by a clicker's keys", shown_big_by_keys(place)).await;
    run.check("lessons: a reload or an edit in the middle loses nothing", nothing_is_lost_in_the_middle(place)).await;
}

const CARD: &str = "document.querySelector('.lesson-card')";
const SAID: &str = "(document.querySelector('.lesson-card [role=status]')?.textContent ?? '')";
const STEP: &str = "(document.querySelector('.lesson-place')?.textContent ?? '')";
const VERDICT: &str = "(document.querySelector('.lesson-verdict')?.textContent ?? '')";
const FIGURES: &str = "[...document.querySelectorAll('.lesson-figures td')].map((cell) => cell.textContent)";
const NAME: &str = "document.querySelector('#design-name').textContent";
const PRESENTING: &str = "document.documentElement.classList.contains('presenting')";

/// A top of the person's own on the stage, and the lessons open beside it: its thickness and frequencies.
async fn own_design_and_lessons(page: &Page<'_>) -> Result<(String, Vec<f64>)> {
    let demo = page.hertz().await?;
    page.type_number("Thickness", "3.4").await?;
    page.figures_changed_from(&demo).await?;
    let own = (page.number("Thickness").await?, page.hertz().await?);
    page.open_section("Lessons").await?;
    Ok(own)
}

async fn is_own(page: &Page<'_>, (thickness, hertz): &(String, Vec<f64>)) -> Result<()> {
    let same =
        format!("document.querySelector('#measures input[id]') !== null && {NAME} === 'Invented demonstration top'");
    page.until("the own design is back", &same).await?;
    page.until("with its thickness", &format!("{VALUES}.includes({thickness:?})")).await?;
    page.settle().await?;
    let now = page.hertz().await?;
    ensure!(now == *hertz, "the own design had {hertz:?}, after the lesson it has {now:?}");
    Ok(())
}

const VALUES: &str = "[...document.querySelectorAll('#measures input[type=number]')].map((field) => field.value)";

async fn press_enter(page: &Page<'_>, button: &str) -> Result<()> {
    Ok(page.in_sight(Role::Button, button).await?.send_keys(Key::Enter + "").await?)
}

/// A key, wherever the focus is.
async fn strike(page: &Page<'_>, key: Key) -> Result<()> {
    Ok(page.session.driver.action_chain().send_keys(key + "").perform().await?)
}

async fn gone_through_by_keyboard(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let own = own_design_and_lessons(&page).await?;
    press_enter(&page, "Why arching stiffens").await?;
    page.until("the lesson is there", &format!("{NAME} === 'Why arching stiffens'")).await?;
    page.until("it is announced", &format!("{SAID}.startsWith('Why arching stiffens')")).await?;
    page.until("its first step is told", &format!("{STEP}.endsWith('step 1 of 3')")).await?;
    page.settle().await?;
    let low_arch = page.hertz().await?;

    press_enter(&page, "To the question").await?;
    page.until("the question is announced", &format!("{SAID}.includes('ring’s frequency?')")).await?;
    // The focus goes to the question, and Tab on to its answers.
    let focused = "document.activeElement.className";
    page.until("the question has the focus", &format!("{focused} === 'lesson-question'")).await?;
    strike(&page, Key::Tab).await?;
    page.until("the first answer has it", "document.activeElement.closest('.lesson-ask fieldset') !== null").await?;
    strike(&page, Key::Enter).await?;
    page.until("the guess is judged", &format!("{VERDICT}.startsWith('Not quite. What happens: It rises')")).await?;
    page.until("figures are there", &format!("{FIGURES}.length === 2")).await?;
    let hertz: Vec<f64> = serde_json::from_value(
        page.value(&format!("return {FIGURES}.map((text) => Number.parseFloat(text));")).await?,
    )?;
    ensure!(hertz[1] > 1.05 * hertz[0], "the ring goes from {} to {} Hz", hertz[0], hertz[1]);
    page.until("they are announced", &format!("{SAID}.includes('Up by')")).await?;
    page.figures_changed_from(&low_arch).await?;

    press_enter(&page, "Back").await?;
    page.until("it is asked again", &format!("{STEP}.endsWith('step 2 of 3')")).await?;
    press_enter(&page, "It rises").await?;
    page.until("the guess is right", &format!("{VERDICT} === 'Right.'")).await?;
    page.until("the figures are there again", &format!("{FIGURES}.length === 2")).await?;

    press_enter(&page, "Next lesson").await?;
    page.until("the next one is there", &format!("{STEP}.startsWith('Lesson 3 of 12')")).await?;
    press_enter(&page, "End the lesson").await?;
    is_own(&page, &own).await?;
    let scale = "document.querySelector('#drawn-scale').textContent";
    page.until("a mode's scale is told again", &format!("{scale}.includes('no true size')")).await?;
    // And the lesson's top is a step that undo goes back to.
    page.press("Undo").await?;
    page.until("a step back is a lesson's", &format!("{NAME} !== 'Invented demonstration top'")).await?;
    page.without_errors().await
}

fn lesson() -> Value {
    json!({
        "format": "bombatura-lesson",
        "version": 1,
        "look": { "mode": "x" },
        "change": { "graduation.flank_mm": 3.2 },
        "right": 1,
        "claim": { "figure": "mass", "goes": "rises", "by": 1 },
        "texts": { "en": {
            "title": "A teacher’s own",
            "see": "The flanks are thin.",
            "question": "What do thicker flanks do to the mass?",
            "choices": ["It rises", "It falls"],
            "change": "The flanks go to 3.2 mm.",
            "why": "More wood weighs more."
        } }
    })
}

async fn teachers_own_is_opened(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let own = own_design_and_lessons(&page).await?;
    let folder = tempfile::tempdir()?;
    let status = "document.querySelector('[data-section=lessons] .note[role=status]').textContent";
    for (what, text, named) in [
        ("with an unknown key", with_key(&lesson(), "/claim", "loud"), "claim.loud"),
        ("with an impossible change", with(&lesson(), "/change", json!({ "graduation.flank_mm": 99 })), "99 mm"),
        ("that is a design", with(&lesson(), "/format", json!("bombatura-design")), "bombatura-lesson"),
        ("cut short", lesson().to_string()[..90].to_owned(), "JSON"),
    ] {
        let path = folder.path().join("wrong.json");
        std::fs::write(&path, text)?;
        page.give("Open a lesson", &path).await?;
        page.until(&format!("a file {what} is refused"), &format!("{status}.includes({named:?})")).await?;
        ensure!(page.number("Thickness").await? == own.0, "a file {what} changed the design");
        ensure!(page.value(&format!("return {CARD} === null;")).await? == true, "a file {what} opened a card");
    }
    let path = folder.path().join("own.json");
    std::fs::write(&path, lesson().to_string())?;
    page.give("Open a lesson", &path).await?;
    page.until("it is opened", &format!("{STEP} === 'Your own lesson, step 1 of 3'")).await?;
    press_enter(&page, "To the question").await?;
    press_enter(&page, "It rises").await?;
    page.until("its figures are there", &format!("{FIGURES}.length === 2 && {FIGURES}[1].endsWith('g')")).await?;
    press_enter(&page, "End the lesson").await?;
    is_own(&page, &own).await?;
    // One that the model doesn't bear out says so.
    std::fs::write(&path, with(&lesson(), "/claim/goes", json!("falls")))?;
    page.give("Open a lesson", &path).await?;
    page.until("it is opened again", &format!("{CARD} !== null")).await?;
    press_enter(&page, "To the question").await?;
    press_enter(&page, "Show what happens").await?;
    let doubt = "document.querySelector('.lesson-doubt')?.textContent ?? ''";
    page.until("the model contradicts it", &format!("({doubt}).includes('does not show')")).await?;
    page.without_errors().await
}

/// The lesson with one key more at a JSON pointer.
fn with_key(lesson: &Value, pointer: &str, key: &str) -> String {
    let mut lesson = lesson.clone();
    if let Some(Value::Object(object)) = lesson.pointer_mut(pointer) {
        object.insert(key.to_owned(), json!(1));
    }
    lesson.to_string()
}

async fn shown_big_by_keys(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let own = own_design_and_lessons(&page).await?;
    page.resize(DESKTOP).await?;
    press_enter(&page, "Grain and wood").await?;
    page.until("the lesson is there", &format!("{NAME} === 'Grain and wood'")).await?;
    page.settle().await?;
    press_enter(&page, "Show it big").await?;
    page.until("it is shown big", PRESENTING).await?;
    let hidden = "['.masthead', '.modes', '.shape', '.drawings'].every((one) => \
                  document.querySelector(one).checkVisibility() === false)";
    ensure!(page.value(&format!("return {hidden};")).await? == true, "controls are still shown");
    let size = "return Number.parseFloat(getComputedStyle(document.querySelector('.lesson-see')).fontSize);";
    let large = page.value(size).await?.as_f64().context("a size of type")?;
    ensure!(large >= 20.0, "the type is {large} px");
    load_axe(&page).await?;
    judge(&page, "presenter mode").await?;

    strike(&page, Key::PageDown).await?;
    page.until("a clicker goes on", &format!("{STEP}.endsWith('step 2 of 3')")).await?;
    judge(&page, "a question shown big").await?;
    strike(&page, Key::Up).await?;
    page.until("and back", &format!("{STEP}.endsWith('step 1 of 3')")).await?;
    strike(&page, Key::Right).await?;
    page.until("and on", &format!("{STEP}.endsWith('step 2 of 3')")).await?;
    strike(&page, Key::PageDown).await?;
    page.until("the answer is shown", &format!("{VERDICT}.startsWith('What happens: It falls')")).await?;
    page.until("with its figures", &format!("{FIGURES}.length === 2")).await?;
    page.resize(PHONE).await?;
    let too_wide = page.value("return document.documentElement.scrollWidth - innerWidth;").await?;
    ensure!(too_wide.as_i64().is_some_and(|px| px <= 0), "it is {too_wide} px wider than a phone");
    judge(&page, "an answer shown big on a phone").await?;
    strike(&page, Key::PageDown).await?;
    page.until("the next lesson follows", &format!("{STEP}.startsWith('Lesson 12 of 12, step 1')")).await?;
    strike(&page, Key::Escape).await?;
    page.until("Escape leaves", &format!("!{PRESENTING}")).await?;
    page.resize(DESKTOP).await?;
    let home = format!("{CARD}.closest('[data-section=lessons]') !== null");
    page.until("the card is back in its section", &home).await?;
    press_enter(&page, "End the lesson").await?;
    is_own(&page, &own).await?;

    // Without a lesson the stage alone, and a clicker goes through the modes.
    press_enter(&page, "Show the stage big").await?;
    page.until("the stage is shown big", PRESENTING).await?;
    let title = "document.querySelector('#stage-title').textContent";
    let before = page.text(&format!("return {title};")).await?;
    strike(&page, Key::PageUp).await?;
    page.until("another mode is shown", &format!("{title} !== {}", serde_json::to_string(&before)?)).await?;
    strike(&page, Key::Escape).await?;
    page.until("Escape leaves again", &format!("!{PRESENTING}")).await?;
    page.without_errors().await
}

async fn nothing_is_lost_in_the_middle(place: &Place<'_>) -> Result<()> {
    let page = place.still_page().await?;
    let own = own_design_and_lessons(&page).await?;
    press_enter(&page, "What a mode is").await?;
    page.until("the lesson is there", &format!("{NAME} === 'What a mode is'")).await?;
    page.settle().await?;
    // Longer than the pause before what is worked on is kept.
    tokio::time::sleep(std::time::Duration::from_secs(1)).await;
    page.session.driver.refresh().await?;
    page.modes_shown().await?;
    is_own(&page, &own).await?;

    page.open_section("Lessons").await?;
    press_enter(&page, "What a mode is").await?;
    page.until("the lesson is there again", &format!("{NAME} === 'What a mode is'")).await?;
    page.settle().await?;
    page.type_number("Thickness", "2.6").await?;
    let problem = "(document.querySelector('.lesson-problem')?.textContent ?? '')";
    page.until("it is said where the own one is", &format!("{problem}.includes('Designs')")).await?;
    page.press("Designs").await?;
    let kept = "(document.querySelector('dialog table')?.textContent ?? '').includes('before a lesson')";
    page.until("it is kept under a name", kept).await?;
    page.value("document.querySelector('dialog').close();").await?;
    press_enter(&page, "End the lesson").await?;
    is_own(&page, &own).await?;
    page.without_errors().await
}
