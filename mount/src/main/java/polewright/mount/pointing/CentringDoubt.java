package polewright.mount.pointing;

import java.util.List;

/**
 * What is wrong with centrings. Indexes count the centrings from 0; likely mistakes come with the likeliest first, and none
 * when nothing simple explains it.
 */
public sealed interface CentringDoubt {
    /**
     * This one contradicts the others.
     *
     * @param surprise χ² of 2 degrees of freedom: over 13.8 once in a thousand by chance
     */
    record OneWrong(int index, double surprise, List<CentringMistake> mistakes) implements CentringDoubt {
        public OneWrong {
            mistakes = List.copyOf(mistakes);
        }
    }

    /** They contradict each other, and which is wrong cannot be told: centre one more star. */
    record OneOf(List<Integer> indexes, List<CentringMistake> mistakes) implements CentringDoubt {
        public OneOf {
            indexes = List.copyOf(indexes);
            mistakes = List.copyOf(mistakes);
        }
    }

    /** Below the horizon at that site and time: some of that is wrong. */
    record NotUp(List<Integer> indexes, List<SharedMistake> mistakes) implements CentringDoubt {
        public NotUp {
            indexes = List.copyOf(indexes);
            mistakes = List.copyOf(mistakes);
        }
    }

    /** All contradict each other, and would agree if one thing was different for all. */
    record AllMistaken(List<SharedMistake> mistakes) implements CentringDoubt {
        public AllMistaken {
            mistakes = List.copyOf(mistakes);
        }
    }

    /**
     * The zero of hour angle is whole hours off to within a few minutes of arc: the clock or the zone, or a mount that was
     * never set. The centrings fit either way, so which it is cannot be told from them.
     *
     * @param hours positive where the tube looks west of its reading
     */
    record ZeroByHours(int hours) implements CentringDoubt {}
}
