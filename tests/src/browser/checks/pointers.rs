//! The drawings' handles under a finger and under a pen, as the browser itself takes such events.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use super::drawings::LOWER_BOUT;
use super::{Place, Run};
use crate::browser::find::Role;
use crate::browser::page::Page;

pub(super) async fn run(place: &Place<'_>, run: &mut Run<'_>) {
    run.check("a handle is dragged by a finger", handle_is_dragged(place, Pointer::Finger)).await;
    run.check("a handle is dragged by a pen", handle_is_dragged(place, Pointer::Pen)).await;
}

#[derive(Clone, Copy)]
enum Pointer {
    Finger,
    Pen,
}

/// Pressed beside the point, within the reach of such a pointer, and moved outwards: the number follows by half the width that a
/// pixel stands for, and one step of undo takes it back.
async fn handle_is_dragged(place: &Place<'_>, pointer: Pointer) -> Result<()> {
    let page = place.still_page().await?;
    let before = page.now(LOWER_BOUT).await?;
    let handle = page.in_sight(Role::Slider, LOWER_BOUT).await?;
    let middle = "const box = arguments[0].querySelector('circle:not(.hit)').getBoundingClientRect(); \
                  return [box.x + box.width / 2, box.y + box.height / 2];";
    let middle = page.session.driver.execute(middle, vec![handle.to_json()?]).await?;
    let [x, y]: [f64; 2] = serde_json::from_value(middle.json().clone()).context("the handle's place")?;
    let beside = [x + 5.0, y + 5.0];
    page.touch(pointer, Phase::Down, beside).await?;
    for step in 1..=4 {
        page.touch(pointer, Phase::Move, [beside[0] + 2.0 * f64::from(step), beside[1]]).await?;
    }
    let wider = format!("{}?.ariaValueNow > {}", super::drawings::slider(LOWER_BOUT), before + 1.0);
    page.until("the number follows", &wider).await?;
    page.touch(pointer, Phase::Up, [beside[0] + 8.0, beside[1]]).await?;
    page.settle().await?;
    ensure!(page.now(LOWER_BOUT).await? > before + 1.0, "let go, the handle went back");
    page.press("Undo").await?;
    let back = format!("{}?.ariaValueNow == {before}", super::drawings::slider(LOWER_BOUT));
    page.until("one step takes it back", &back).await?;
    page.without_errors().await
}

#[derive(Clone, Copy, PartialEq)]
enum Phase {
    Down,
    Move,
    Up,
}

impl Page<'_> {
    async fn touch(&self, pointer: Pointer, phase: Phase, [x, y]: [f64; 2]) -> Result<()> {
        let (command, event): (_, Value) = match pointer {
            Pointer::Finger => {
                let points = if phase == Phase::Up { json!([]) } else { json!([{ "x": x, "y": y }]) };
                let kind = match phase {
                    Phase::Down => "touchStart",
                    Phase::Move => "touchMove",
                    Phase::Up => "touchEnd",
                };
                ("Input.dispatchTouchEvent", json!({ "type": kind, "touchPoints": points }))
            }
            Pointer::Pen => {
                let (kind, button, buttons) = match phase {
                    Phase::Down => ("mousePressed", "left", 1),
                    Phase::Move => ("mouseMoved", "none", 1),
                    Phase::Up => ("mouseReleased", "left", 0),
                };
                let event = json!({
                    "type": kind, "x": x, "y": y, "button": button, "buttons": buttons, "clickCount": 1, "pointerType": "pen",
                });
                ("Input.dispatchMouseEvent", event)
            }
        };
        self.session.devtools(command, event).await?;
        Ok(())
    }
}
