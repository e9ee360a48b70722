//! What can be wrong with a shell before it is solved.

use thiserror::Error;

use crate::patience::GivenUp;
use crate::wood::WoodError;

/// A mesh, support or wood from which no shell can be built.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum ShellError {
    /// Lists that describe the nodes differ in length.
    #[error("{what} has {got} entries, but the mesh has {nodes} nodes; give one for each node")]
    Lengths {
        /// Which list.
        what: &'static str,
        /// Its length.
        got: usize,
        /// The number of nodes.
        nodes: usize,
    },
    /// A coordinate, normal or thickness that isn't a finite number, or a thickness that isn't above zero.
    #[error("{what} of node {node} is {value}; it must be a finite number{limit}")]
    BadNodeValue {
        /// Which quantity.
        what: &'static str,
        /// The node.
        node: usize,
        /// Its value.
        value: f64,
        /// What else must hold, in words that follow "number".
        limit: &'static str,
    },
    /// A triangle names a node that isn't there.
    #[error("triangle {triangle} names node {node}, but the nodes are 0 to {last}")]
    NoSuchNode {
        /// The triangle.
        triangle: usize,
        /// The node it names.
        node: u32,
        /// The last node there is.
        last: usize,
    },
    /// A triangle without area.
    #[error(
        "triangle {triangle} (nodes {nodes:?}) is a sliver: twice its area over its longest edge squared is \
         {slenderness:.1e}, and must be above {limit:.0e}; move a node or leave the triangle out"
    )]
    Sliver {
        /// The triangle.
        triangle: usize,
        /// Its nodes.
        nodes: [u32; 3],
        /// Height over longest edge.
        slenderness: f64,
        /// Smallest allowed.
        limit: f64,
    },
    /// A node that no triangle uses would move without resistance.
    #[error("node {node} belongs to no triangle; remove it or join it to the mesh")]
    LooseNode {
        /// The node.
        node: usize,
    },
    /// Nothing is left to move.
    #[error("every degree of freedom is held, so nothing can move; free some of the supports")]
    NothingMoves,
    /// The wood cannot be.
    #[error(transparent)]
    Wood(#[from] WoodError),
    /// Nobody waits for the result.
    #[error(transparent)]
    GivenUp(#[from] GivenUp),
}
