package polewright.alignment.fix;

import java.time.Duration;
import java.util.List;
import polewright.alignment.sighting.Sighting;
import polewright.sky.place.Site;

/** A possible mistake in the entries, with the value that would correct it. */
public sealed interface Mistake {
    /** Completes "it would fit if …". */
    String words();

    /**
     * The screws were not turned as entered.
     *
     * @param seq the number of the event
     * @param meant what they did instead
     */
    record TurnMistaken(long seq, Step meant, String words) implements Mistake {}

    /**
     * Screws were turned between two sightings, and that was not logged.
     *
     * @param meant the turns, of unknown size
     */
    record TurnNotLogged(Step.TurnedUnlogged meant, String words) implements Mistake {}

    /**
     * One sighting was misread or mistyped, or another star was sighted.
     *
     * @param seq the number of the event
     * @param meant the sighting as it should have been entered
     */
    record SightingMisread(long seq, Sighting meant, String words) implements Mistake {}

    /**
     * The same mistake was made in every sighting in which it is possible.
     *
     * @param misread each as it should have been entered
     */
    record HabitualMistake(List<SightingMisread> misread, String words) implements Mistake {
        public HabitualMistake {
            misread = List.copyOf(misread);
        }
    }

    /**
     * The clock used for the night's times was wrong.
     *
     * @param correction what to add to every time of the night
     */
    record ClockWrong(Duration correction, String words) implements Mistake {}

    /** The site was entered wrongly. */
    record SiteWrong(Site meant, String words) implements Mistake {}
}
