//! The second listener: begun and ended while the program runs.

use crate::app::App;
use crate::routes;
use crate::text;
use std::net::{IpAddr, Ipv4Addr, SocketAddr, UdpSocket};
use std::sync::{Mutex, PoisonError};
use std::time::Duration;
use tokio::net::TcpListener;
use tokio::sync::watch;
use tokio::task::JoinHandle;

/// How long what is under way may go on after switching off.
const GRACE: Duration = Duration::from_secs(2);

/// The listener for phones, if it is on.
#[derive(Default)]
pub(crate) struct Network {
    on: Mutex<Option<On>>,
    /// Held while it is switched, so that two presses don't meet.
    switching: tokio::sync::Mutex<()>,
}

struct On {
    address: SocketAddr,
    off: watch::Sender<bool>,
    task: JoinHandle<()>,
}

impl Network {
    /// Where phones come in; none while it is off.
    pub(crate) fn address(&self) -> Option<SocketAddr> {
        let on = self.on.lock().unwrap_or_else(PoisonError::into_inner);
        on.as_ref().map(|on| on.address)
    }

    /// Switches on at an address, in place of another one where it is on already; the
    /// error is a sentence.
    pub(crate) async fn switch_on(&self, app: &App, wanted: SocketAddr) -> Result<(), String> {
        let _turn = self.switching.lock().await;
        self.stop().await;
        let cant = |error: std::io::Error| {
            text::phone::cant_be_used_choose_this_computers_own(wanted, &error)
        };
        let listener = TcpListener::bind(wanted).await.map_err(cant)?;
        let address = listener.local_addr().map_err(cant)?;
        let (off, mut told) = watch::channel(false);
        let router = routes::for_phones(app.clone(), address);
        let service = router.into_make_service_with_connect_info::<SocketAddr>();
        let task = tokio::spawn(async move {
            let served = axum::serve(listener, service).with_graceful_shutdown(async move {
                let _ = told.wait_for(|off| *off).await;
            });
            if let Err(error) = served.await {
                tracing::error!(%error, "the listener for phones failed");
            }
        });
        *self.on.lock().unwrap_or_else(PoisonError::into_inner) = Some(On { address, off, task });
        Ok(())
    }

    /// Switches off. When this is done the port is closed.
    pub(crate) async fn switch_off(&self) {
        let _turn = self.switching.lock().await;
        self.stop().await;
    }

    async fn stop(&self) {
        let on = self
            .on
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .take();
        let Some(mut on) = on else { return };
        on.off.send_replace(true);
        if tokio::time::timeout(GRACE, &mut on.task).await.is_err() {
            on.task.abort();
            let _ = on.task.await;
        }
    }
}

/// This computer's address on the local network, as far as it can be told; nothing is sent.
pub(crate) fn own_address() -> Option<Ipv4Addr> {
    let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0)).ok()?;
    // An address set aside for documentation (RFC 5737): it only makes the system choose a way out.
    socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9)).ok()?;
    match socket.local_addr().ok()?.ip() {
        IpAddr::V4(address) if is_local(address) && !address.is_loopback() => Some(address),
        _ => None,
    }
}

/// An address that a person typed; the error is a sentence.
pub(crate) fn chosen_address(typed: &str) -> Result<Ipv4Addr, String> {
    let address: Ipv4Addr = typed
        .parse()
        .map_err(|_| text::phone::is_no_address_write_four_numbers(typed))?;
    if is_local(address) {
        Ok(address)
    } else {
        Err(text::phone::is_no_address_of_a_local_network(address))
    }
}

/// Whether an address can't be reached from the internet.
///
/// # Source
/// RFC 1918 (private), RFC 3927 (link-local), RFC 6890 (loopback).
fn is_local(address: Ipv4Addr) -> bool {
    address.is_private() || address.is_link_local() || address.is_loopback()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_addresses_of_local_networks_are_taken() {
        for typed in [
            "192.168.1.20",
            "10.0.0.7",
            "172.31.255.1",
            "169.254.3.4",
            "127.0.0.1",
        ] {
            assert!(chosen_address(typed).is_ok(), "{typed}");
        }
        for typed in [
            "8.8.8.8",
            "0.0.0.0",
            "172.32.0.1",
            "255.255.255.255",
            "224.0.0.1",
        ] {
            let sentence = chosen_address(typed).unwrap_err();
            assert!(
                sentence.contains("no address of a local network"),
                "{sentence}"
            );
        }
        for typed in ["", "localhost", "192.168.1", "192.168.1.20:80", "::1"] {
            assert!(
                chosen_address(typed).unwrap_err().contains("is no address"),
                "{typed}"
            );
        }
    }
}
