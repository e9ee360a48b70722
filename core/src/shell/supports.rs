//! What is held.

/// Displacements along x, y, z and rotations about them.
pub const DOFS_PER_NODE: usize = 6;

/// Which degrees of freedom are held at zero.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Supports {
    /// (node, dof): displacements x, y, z, then rotations about them.
    pub held: Vec<[bool; DOFS_PER_NODE]>,
}

impl Supports {
    /// Nothing is held: a plate in the hand.
    #[must_use]
    pub fn free(nodes: usize) -> Self {
        Self { held: vec![[false; DOFS_PER_NODE]; nodes] }
    }

    /// The given nodes can't move but may turn.
    #[must_use]
    pub fn hinged(nodes: usize, along: &[u32]) -> Self {
        Self::holding(nodes, along, [true, true, true, false, false, false])
    }

    /// The given nodes can neither move nor turn.
    #[must_use]
    pub fn clamped(nodes: usize, along: &[u32]) -> Self {
        Self::holding(nodes, along, [true; DOFS_PER_NODE])
    }

    fn holding(nodes: usize, along: &[u32], pattern: [bool; DOFS_PER_NODE]) -> Self {
        let mut supports = Self::free(nodes);
        for &node in along {
            supports.held[node as usize] = pattern;
        }
        supports
    }

    /// Whether `node` can't turn.
    #[must_use]
    pub fn turning_is_held(&self, node: u32) -> bool {
        self.held[node as usize][3..].iter().all(|held| *held)
    }

    /// Whether nothing at all is held.
    #[must_use]
    pub fn is_free(&self) -> bool {
        self.held.iter().flatten().all(|held| !held)
    }
}
