//! A value kept until what it was made from changes.

/// The last value of a stage, with the inputs it was made from and how often it was made.
#[derive(Debug)]
pub(super) struct Kept<I, V> {
    last: Option<(I, V)>,
    runs: usize,
    number: usize,
}

impl<I, V> Default for Kept<I, V> {
    fn default() -> Self {
        Self { last: None, runs: 0, number: 0 }
    }
}

impl<I: PartialEq, V> Kept<I, V> {
    /// The value for `inputs`, made only when they differ from the last. A failure leaves the last value as it was.
    pub(super) fn get<E>(&mut self, inputs: I, make: impl FnOnce() -> Result<V, E>) -> Result<&V, E> {
        self.revise(inputs, |_| make())
    }

    /// The same where the last value helps to make the next one.
    pub(super) fn revise<E>(&mut self, inputs: I, make: impl FnOnce(Option<&V>) -> Result<V, E>) -> Result<&V, E> {
        let made = match self.last.take() {
            Some((made_from, value)) if made_from == inputs => (made_from, value),
            last => {
                self.last = last;
                self.runs += 1;
                let value = make(self.last())?;
                self.number = self.runs;
                (inputs, value)
            }
        };
        Ok(&self.last.insert(made).1)
    }

    /// The value last made or confirmed, whatever its inputs.
    pub(super) fn last(&self) -> Option<&V> {
        self.last.as_ref().map(|(_, value)| value)
    }

    /// The number of that value, which no other value of this stage has had: a stage made from it is made from this number.
    pub(super) fn number(&self) -> usize {
        self.number
    }

    /// How often it was made, failures included.
    pub(super) fn runs(&self) -> usize {
        self.runs
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_made_once_for_the_same_inputs_and_survives_a_failure() {
        let mut kept = Kept::default();
        let fine = |n: i32| move || Ok::<_, String>(n * n);
        assert_eq!(kept.get(3, fine(3)), Ok(&9));
        assert_eq!(kept.get(3, || Err("not asked".to_owned())), Ok(&9));
        assert_eq!(kept.get(4, || Err("no".to_owned())), Err("no".to_owned()));
        assert_eq!((kept.last(), kept.number(), kept.runs()), (Some(&9), 1, 2));
        assert_eq!(kept.get(4, fine(4)), Ok(&16));
        assert_eq!((kept.number(), kept.runs()), (3, 3));
    }
}
