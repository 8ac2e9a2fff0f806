package polewright.mount.pointing;

import java.util.List;

/**
 * What is wrong with centrings. Indexes count the centrings from 0. Likely mistakes are listed likeliest first; the
 * list is empty if nothing simple explains the deviation.
 */
public sealed interface CentringDoubt {
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /**
     * One centring contradicts the others.
     *
     * @param surprise χ² with 2 degrees of freedom: over 13.8 once in a thousand by chance
     */
    record OneWrong(int index, double surprise, List<CentringMistake> mistakes) implements CentringDoubt {
        public OneWrong {
            mistakes = List.copyOf(mistakes);
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.oneWrong(this);
        }
    }

    /** They contradict each other, and the data do not show which is wrong: centre one more star. */
    record OneOf(List<Integer> indexes, List<CentringMistake> mistakes) implements CentringDoubt {
        public OneOf {
            indexes = List.copyOf(indexes);
            mistakes = List.copyOf(mistakes);
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.oneOf(this);
        }
    }

    /** Below the horizon at that site and time, so something is wrong. */
    record NotUp(List<Integer> indexes, List<SharedMistake> mistakes) implements CentringDoubt {
        public NotUp {
            indexes = List.copyOf(indexes);
            mistakes = List.copyOf(mistakes);
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.notUp(this);
        }
    }

    /** All contradict each other, but would agree if one thing were different for all. */
    record AllMistaken(List<SharedMistake> mistakes) implements CentringDoubt {
        public AllMistaken {
            mistakes = List.copyOf(mistakes);
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.allMistaken(this);
        }
    }

    /**
     * The zero of hour angle is off by whole hours to within a few arcminutes: the clock, the time zone, or a mount
     * that was never set. The centrings fit in each case, so they cannot distinguish them.
     *
     * @param hours positive if the tube points west of its reading
     */
    record ZeroByHours(int hours) implements CentringDoubt {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.zeroByHours(this);
        }
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R oneWrong(OneWrong doubt);

        R oneOf(OneOf doubt);

        R notUp(NotUp doubt);

        R allMistaken(AllMistaken doubt);

        R zeroByHours(ZeroByHours doubt);
    }
}
