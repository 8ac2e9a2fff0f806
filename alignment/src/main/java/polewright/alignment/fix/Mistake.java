package polewright.alignment.fix;

import java.time.Duration;
import java.util.List;
import polewright.alignment.sighting.Sighting;
import polewright.sky.place.Site;

/** A possible mistake in the entries, with the value that would correct it. */
public sealed interface Mistake {
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /** Completes "it would fit if …". */
    String words();

    /** The same with the number of the event, if it is about one. */
    default String wordsInNight() {
        return words();
    }

    /** Whether it affects every sighting, so that none can be used before it is corrected. */
    default boolean affectsEverySighting() {
        return false;
    }

    /** Whether it says that this sighting was misread. */
    default boolean isMisreadingOf(long sighting) {
        return false;
    }

    /**
     * The screws were not turned as entered.
     *
     * @param seq the number of the event
     * @param meant what they did instead
     */
    record TurnMistaken(long seq, Step meant, String words) implements Mistake {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.turnMistaken(this);
        }

        @Override
        public String wordsInNight() {
            return "at turn #" + seq + " " + words;
        }
    }

    /**
     * Screws were turned between two sightings, and that was not logged.
     *
     * @param meant the turns, of unknown size
     */
    record TurnNotLogged(Step.TurnedUnlogged meant, String words) implements Mistake {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.turnNotLogged(this);
        }
    }

    /**
     * One sighting was misread or mistyped, or another star was sighted.
     *
     * @param seq the number of the event
     * @param meant the sighting as it should have been entered
     */
    record SightingMisread(long seq, Sighting meant, String words) implements Mistake {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.sightingMisread(this);
        }

        @Override
        public String wordsInNight() {
            return "at sighting #" + seq + " " + words;
        }

        @Override
        public boolean isMisreadingOf(long sighting) {
            return seq == sighting;
        }
    }

    /**
     * The same mistake was made in every sighting in which it is possible.
     *
     * @param misread each as it should have been entered
     */
    record HabitualMistake(List<SightingMisread> misread, String words) implements Mistake {
        public HabitualMistake {
            misread = List.copyOf(misread);
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.habitualMistake(this);
        }

        @Override
        public boolean isMisreadingOf(long sighting) {
            return misread.stream().anyMatch(one -> one.isMisreadingOf(sighting));
        }
    }

    /**
     * The clock used for the night's times was wrong.
     *
     * @param correction what to add to every time of the night
     */
    record ClockWrong(Duration correction, String words) implements Mistake {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.clockWrong(this);
        }

        @Override
        public boolean affectsEverySighting() {
            return true;
        }
    }

    /** The site was entered wrongly. */
    record SiteWrong(Site meant, String words) implements Mistake {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.siteWrong(this);
        }

        @Override
        public boolean affectsEverySighting() {
            return true;
        }
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R turnMistaken(TurnMistaken mistake);

        R turnNotLogged(TurnNotLogged mistake);

        R sightingMisread(SightingMisread mistake);

        R habitualMistake(HabitualMistake mistake);

        R clockWrong(ClockWrong mistake);

        R siteWrong(SiteWrong mistake);
    }
}
