//! Finding things as a person does: by their role and their name, as the browser tells them to a screen reader.

use std::time::{Duration, Instant};

use anyhow::{Result, bail};
use http::Method;
use thirtyfour::SessionId;
use thirtyfour::common::command::FormatRequestData;
use thirtyfour::common::requestdata::RequestData;
use thirtyfour::prelude::*;

/// How long a thing may take to appear. Software rendering on a loaded machine is slow; a person would wait too.
const PATIENCE: Duration = Duration::from_secs(20);

/// A kind of thing on the page, with its WAI-ARIA name and the elements that can have that role.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    Button,
    Slider,
    Number,
    Checkbox,
    Choice,
    Table,
    Text,
}

impl Role {
    fn name(self) -> &'static str {
        match self {
            Role::Button => "button",
            Role::Slider => "slider",
            Role::Number => "spinbutton",
            Role::Checkbox => "checkbox",
            Role::Choice => "combobox",
            Role::Table => "table",
            Role::Text => "textbox",
        }
    }

    /// Asking the browser for a role takes a message each, so only elements that can have it are asked.
    fn candidates(self) -> &'static str {
        match self {
            Role::Button => "button, [role=button]",
            Role::Slider => "input[type=range], [role=slider]",
            Role::Number => "input[type=number], [role=spinbutton]",
            Role::Checkbox => "input[type=checkbox], [role=checkbox]",
            Role::Choice => "select, [role=combobox]",
            Role::Table => "table, [role=table], [role=grid]",
            Role::Text => "input:not([type]), input[type=text], [role=textbox]",
        }
    }
}

/// The displayed thing with this role whose name contains `name`, ignoring case; waits for it to appear.
pub(super) async fn find(driver: &WebDriver, role: Role, name: &str) -> Result<WebElement> {
    let begun = Instant::now();
    loop {
        let mut seen = Vec::new();
        for element in driver.find_all(By::Css(role.candidates())).await? {
            // What was replaced meanwhile is looked at again in the next round.
            let Ok(label) = ask(driver, &element, "computedlabel").await else { continue };
            if label.to_lowercase().contains(&name.to_lowercase())
                && ask(driver, &element, "computedrole").await.is_ok_and(|found| found == role.name())
                && element.is_displayed().await.unwrap_or(false)
            {
                return Ok(element);
            }
            seen.push(label);
        }
        if begun.elapsed() > PATIENCE {
            bail!("the page shows no {} named “{name}”; it has {seen:?}", role.name());
        }
        tokio::time::sleep(Duration::from_millis(100)).await;
    }
}

/// What the browser's accessibility tree says of an element.
async fn ask(driver: &WebDriver, element: &WebElement, what: &'static str) -> Result<String> {
    let answer = driver.handle().cmd(Ask { element: element.element_id().to_string(), what }).await?;
    Ok(answer.value()?)
}

/// WebDriver's `Get Computed Role` and `Get Computed Label`.
#[derive(Debug)]
struct Ask {
    element: String,
    what: &'static str,
}

impl FormatRequestData for Ask {
    fn format_request(&self, session_id: &SessionId) -> RequestData {
        RequestData::new(Method::GET, format!("/session/{session_id}/element/{}/{}", self.element, self.what))
    }
}
