package polewright.bench.independent;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.fix.Fix;
import polewright.bench.independent.truth.Place;
import polewright.bench.independent.truth.Wedge;
import polewright.mount.rig.Orientation;
import polewright.session.NightState;

/**
 * A night with one mistake in it, and the result.
 *
 * @param mistake which
 * @param night as it was played
 * @param isMade whether there was an occasion for it
 * @param isMoved whether it ever moved the estimated axis by more than two of the sigmas of the night without it
 * @param isNoticed whether, after it, anything was set aside, doubted or refused
 * @param isNamed whether it was correctly named
 * @param isHonestAccused whether at the end a sighting is set aside that was logged correctly
 */
record MistakenNight(
        Mistake mistake,
        PlayedNight night,
        boolean isMade,
        boolean isMoved,
        boolean isNoticed,
        boolean isNamed,
        boolean isHonestAccused) {
    private static final double LARGEST_OFFSET_DEG = 2.5;
    private static final double LARGEST_IN_THE_FINDER_DEG = 1;
    private static final double LEAST_LATITUDE_DEG = 20;
    private static final double ALLOWANCE_ARCMIN = 5;
    private static final double SIGNIFICANT_SQUARE = 4;
    private static final double SIGNIFICANT_DECLINATION_DEG = 8;
    private static final double SIGNIFICANT_LONGITUDE_DEG = 5;
    private static final double FARTHEST_LATITUDE_DEG = 75;

    /**
     * The night of a seed, played.
     *
     * @param isCorrecting whether the person corrects the mistake when it is named
     */
    static MistakenNight of(Mistake mistake, long seed, boolean isCorrecting) {
        // Only a pole star inside the finder can be reported the wrong way round.
        double largestOffsetDeg = mistake == Mistake.VIEW ? LARGEST_IN_THE_FINDER_DEG : LARGEST_OFFSET_DEG;
        Scene scene = Scene.drawn(seed, LEAST_LATITUDE_DEG, largestOffsetDeg, place -> isFor(mistake, place));
        TrueWedge screws = TrueWedge.asStated(scene.random());
        Wedge wedge = screws.at(scene);
        Slip slip = Slip.of(mistake, scene.random());
        Told truly = Told.truly(scene, screws.statedByRuler(Orientation.INVERTED));
        Told stated = slip.stated(truly, screws.statedByRuler(Orientation.ERECT));
        Habits habits = switch (mistake) {
            case COMPASS_END, DECLINATION_SIGN -> Habits.USUAL.taking(SightingKind.COMPASS);
            case VIEW -> Habits.USUAL.taking(SightingKind.STILL_POINT);
            default -> Habits.USUAL;
        };
        return judged(
                mistake,
                Person.play(scene, wedge, stated, truly, habits.correcting(isCorrecting), slip, ALLOWANCE_ARCMIN));
    }

    /** Whether the mistake can be made there at all, and differs from the truth. */
    private static boolean isFor(Mistake mistake, Place place) {
        double longitudeDeg = Math.abs(Math.toDegrees(place.longitude()));
        return switch (mistake) {
            case LONGITUDE_SIGN ->
                longitudeDeg > SIGNIFICANT_LONGITUDE_DEG && longitudeDeg < 180 - SIGNIFICANT_LONGITUDE_DEG;
            case SWAPPED ->
                longitudeDeg < FARTHEST_LATITUDE_DEG
                        && Math.abs(place.longitude() - place.latitude()) > Math.toRadians(SIGNIFICANT_LONGITUDE_DEG);
            case DECLINATION_SIGN -> Math.abs(Told.modelDeclinationDeg(place)) > SIGNIFICANT_DECLINATION_DEG;
            default -> true;
        };
    }

    private static MistakenNight judged(Mistake mistake, PlayedNight night) {
        List<Moment> after = night.moments().stream().filter(Moment::slipped).toList();
        boolean isMade = !after.isEmpty()
                && (!mistake.isOfTheWholeNight() || night.moments().size() > 1);
        int first = night.moments().size() - after.size();
        List<String> refusals = night.refusals().stream()
                .filter(refusal -> refusal.afterEvents() >= first)
                .map(PlayedNight.Refusal::words)
                .toList();
        boolean isNoticed = !refusals.isEmpty()
                || after.stream()
                        .anyMatch(moment -> Accusations.of(moment.night()).isAny());
        boolean isNamed = Stream.concat(
                        refusals.stream(),
                        after.stream().flatMap(moment -> Accusations.of(moment.night()).causes().stream()))
                .anyMatch(cause -> CauseWords.name(mistake, cause, night.watchedInstead()));
        Set<Long> honest = new HashSet<>(Accusations.of(night.last().night()).setAside());
        honest.removeAll(night.mistaken());
        return new MistakenNight(
                mistake, night, isMade, isMoved(after), isNoticed, isMade && isNamed, !honest.isEmpty());
    }

    private static boolean isMoved(List<Moment> after) {
        NightState.ModelCache models = new NightState.ModelCache();
        return after.stream().anyMatch(moment -> {
            Fix believed = moment.night().fix();
            Fix rightly = NightState.of(
                            moment.right(),
                            moment.right().get(moment.right().size() - 1).at(),
                            models)
                    .fix();
            return StatedRegion.squaredSigmas(rightly, StatedRegion.believed(believed)) > SIGNIFICANT_SQUARE;
        });
    }

    /** Whether it counts: it moved the axis, or was noticed though it did not. */
    boolean counts() {
        return isMade && (isMoved || isNoticed);
    }
}
