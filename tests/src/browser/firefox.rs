//! The page in Firefox: drawn by WebGL 2 in software, on a screen that nobody sees, and driven by nothing. The page itself tells its
//! server when it is done.

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail, ensure};
use bombatura_serve::serve::Server;

use super::checks::scenes::{HEIGHT, WIDTH};
use super::pixels::Picture;
use super::process::Process;
use super::site_copy;
use super::virtual_screen::VirtualScreen;

/// Without a graphics card WebGL is off if nothing forces it; less motion is wished for so that the top stands; the rest keeps the
/// window free of anything but the page, and off the network.
const PREFERENCES: &str = r#"
user_pref("webgl.force-enabled", true);
user_pref("ui.prefersReducedMotion", 1);
user_pref("browser.aboutwelcome.enabled", false);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("toolkit.telemetry.enabled", false);
user_pref("app.update.enabled", false);
"#;

/// Asked for once all is worked out, with what draws, what the page computed and how many errors it had.
const DONE: &str = "/firefox-is-done-";

/// How long a visit may take on a loaded machine.
const PATIENCE: Duration = Duration::from_secs(120);

/// The stage of a first visit, `WIDTH` by `HEIGHT` pixels.
///
/// # Errors
/// When Firefox or Xvfb can't be started, or the page fails or takes too long.
pub(super) fn first_visit(site: &Path) -> Result<Picture> {
    let folder = tempfile::tempdir()?;
    let copied = folder.path().join("site");
    site_copy::copy_with(site, &copied, &told_when_done())?;
    let profile = folder.path().join("profile");
    std::fs::create_dir(&profile)?;
    std::fs::write(profile.join("user.js"), PREFERENCES)?;
    let server = Server::start(&copied, 0)?;
    let screen = VirtualScreen::start()?;
    let firefox = Command::new("firefox-esr")
        .arg("--profile")
        .arg(&profile)
        .args(["--no-remote", "--kiosk", &server.url()])
        .env("DISPLAY", &screen.display)
        .env("HOME", folder.path())
        .env("LIBGL_ALWAYS_SOFTWARE", "1")
        .env("MOZ_CRASHREPORTER_DISABLE", "1")
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .context("can't start Firefox")?;
    let mut firefox = Process(firefox);
    let begun = Instant::now();
    let told = loop {
        let served = server.take_served();
        if let Some(told) = served.iter().find_map(|answer| answer.target.strip_prefix(DONE).map(str::to_owned)) {
            break told;
        }
        ensure!(firefox.0.try_wait()?.is_none(), "Firefox ended by itself");
        if begun.elapsed() > PATIENCE {
            bail!("Firefox isn't done with the page after {PATIENCE:?}");
        }
        std::thread::sleep(Duration::from_millis(100));
    };
    ensure!(told == "webgl2-0", "Firefox drew with, and had errors: {told}");
    screen.picture()?.corner(WIDTH, HEIGHT)
}

/// Lays the stage over everything else and tells when its last frame is through.
fn told_when_done() -> String {
    format!(
        "<style>#stage-view {{ position: fixed; inset: 0 auto auto 0; z-index: 9; inline-size: {WIDTH}px; \
         block-size: {HEIGHT}px; }}</style><script type=\"module\">let errors = 0; addEventListener('error', () => errors++); \
         addEventListener('unhandledrejection', () => errors++); const look = setInterval(() => {{ \
         if (document.documentElement.dataset.surety === 'known') {{ clearInterval(look); setTimeout(() => \
         fetch('{DONE}' + document.querySelector('#stage-view').dataset.backend + '-' + errors), 1500); }} }}, 100);</script>"
    )
}
