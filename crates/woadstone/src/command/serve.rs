//! `woadstone serve`: the app on the loopback address.

use crate::text;
use std::{
    net::{Ipv4Addr, SocketAddr},
    path::PathBuf,
    sync::{Arc, Mutex},
};

use anyhow::Context;
use store::Bench;

use crate::{
    cli::ServeArgs,
    command::{now, open},
    demo, home,
    outcome::{Outcome, Stop, print},
};

/// Serves the person's own bench.
pub fn run(home: Option<PathBuf>, args: &ServeArgs) -> Outcome {
    let home = home::own(home)?;
    let bench = open(&home)?;
    serve(bench, args.port, "")
}

/// Serves a bench until the person stops it; `path` is what to open first.
pub fn serve(bench: Bench, port: u16, path: &str) -> Outcome {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .enable_all()
        .build()
        .context(text::command::cant_start_the_servers_threads())?;
    runtime.block_on(async {
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
        let listener = tokio::net::TcpListener::bind(address).await.map_err(|e| {
            Stop::refused(text::command::port_cant_be_used_is_woadstone_running(
                port, &e,
            ))
        })?;
        let address = listener.local_addr()?;
        print(&format!(
            "{}\n",
            text::command::open_http_stop_with_ctrl_c(address, path)
        ))?;
        web::serve(web::Config {
            listener,
            bench: Arc::new(Mutex::new(bench)),
            demo: Arc::new(|bench| {
                demo::lay_out(bench, &now(), &mut |_| {}).map_err(|e| format!("{e:#}"))
            }),
        })
        .await
        .context(text::command::the_server_stopped())?;
        Ok(())
    })
}
