package polewright.report.text;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import polewright.alignment.advice.AdvisedStar;
import polewright.alignment.sighting.CentredStars;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.CentringDoubt;
import polewright.mount.pointing.CentringMistake;
import polewright.mount.pointing.GoToSky;
import polewright.mount.pointing.InseparableTerms;
import polewright.mount.pointing.PointingModel;
import polewright.mount.pointing.PointingOutcome;
import polewright.mount.pointing.PointingTerm;
import polewright.mount.pointing.SharedMistake;
import polewright.mount.pointing.SkyOffset;
import polewright.mount.pointing.StarResidual;
import polewright.mount.pointing.TermEstimate;
import polewright.mount.reach.PointingLimits;
import polewright.mount.reach.ReachableSky;
import polewright.session.BrightStars;
import polewright.session.NightPointing;
import polewright.session.NightState;
import polewright.sky.angle.Angle;
import polewright.sky.body.SunGuard;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SkyTime;

/** A mount's pointing errors from centred stars, in words. */
public final class PointingWords {
    /** Heading of {@link #errors}. */
    public static final String ERRORS = "Mount errors from these stars";

    /** Heading of {@link #left}. */
    public static final String LEFT = "Residual at each star; error if left out";

    private static final Angle LOWEST = Angle.ofDegrees(20);
    private static final Angle NEW_STAR = Angle.ofDegrees(3);

    private PointingWords() {}

    /** After one more star: the go-to accuracy now, and contradictions. */
    public static List<String> brief(NightState night, NightPointing pointing) {
        List<String> lines = new ArrayList<>();
        if (pointing.outcome() instanceof PointingOutcome.Fitted fitted && isTelling(pointing)) {
            lines.add(expected(night, fitted.model()));
        } else {
            lines.add(few(pointing));
        }
        lines.addAll(doubts(pointing));
        return lines;
    }

    /** All of it. */
    public static List<String> full(NightState night, NightPointing pointing, Instant now) {
        List<String> lines = new ArrayList<>(standing(night, pointing, now));
        if (!(pointing.outcome() instanceof PointingOutcome.Fitted fitted)) {
            return lines;
        }
        PointingModel model = fitted.model();
        lines.add("");
        lines.add(ERRORS + ":");
        errors(model)
                .forEach(error -> lines.add(
                        String.format(Locale.ROOT, "  %-24s %s ± %s", error.term(), error.value(), error.sigma())));
        lines.addAll(notDetermined(pointing, model));
        lines.add("");
        lines.add(LEFT + ":");
        left(pointing, model)
                .forEach(star -> lines.add("  " + star.star() + ": " + star.left() + "; " + star.without() + "."));
        return lines;
    }

    /** The go-to accuracy, whether it is sufficient, what to centre next, and contradictions. */
    public static List<String> standing(NightState night, NightPointing pointing, Instant now) {
        List<String> lines = new ArrayList<>();
        if (!(pointing.outcome() instanceof PointingOutcome.Fitted fitted)) {
            lines.add(few(pointing));
            lines.addAll(doubts(pointing));
            return lines;
        }
        PointingModel model = fitted.model();
        lines.add(expected(night, model));
        night.work().map(work -> enough(work, night, model)).ifPresent(lines::addAll);
        next(night, model, now).ifPresent(lines::add);
        lines.addAll(doubts(pointing));
        if (!isTelling(pointing)) {
            lines.add(few(pointing));
        }
        return lines;
    }

    private static boolean isTelling(NightPointing pointing) {
        return pointing.checked().believed().size() >= CentredStars.FEWEST;
    }

    private static String few(NightPointing pointing) {
        int believed = pointing.checked().believed().size();
        return (believed == 0 ? "No star" : believed == 1 ? "One star" : believed + " stars")
                + " centred since the axis"
                + " last moved. Three or more give the mount's errors and the polar axis.";
    }

    private static String expected(NightState night, PointingModel model) {
        return "Go-tos land within " + AngleWords.size(over(night, model).radius95(model))
                + " of the centre (95 %) over the reachable sky; from "
                + model.centrings().size() + (model.centrings().size() == 1 ? " star." : " stars.");
    }

    private static GoToSky over(NightState night, PointingModel model) {
        PointingLimits reach =
                PointingLimits.of(night.begun().site(), night.begun().rig(), night.horizon());
        return GoToSky.of(model, ReachableSky.above(LOWEST, night.begun().site(), reach));
    }

    private static List<String> enough(Work work, NightState night, PointingModel model) {
        Angle error = over(night, model).radius95(model);
        List<String> lines = new ArrayList<>();
        work.items().stream()
                .filter(VisualObservation.class::isInstance)
                .map(VisualObservation.class::cast)
                .forEach(look -> look.goToWithin()
                        .ifPresent(within -> lines.add(
                                (error.compareTo(within) <= 0 ? "Accurate enough for " : "Not yet accurate enough for ")
                                        + look.name() + ", which needs " + AngleWords.size(within) + ".")));
        return lines;
    }

    private static Optional<String> next(NightState night, PointingModel model, Instant now) {
        ObservingMoment moment = ObservingMoment.of(
                night.begun().site(), SkyTime.of(now), night.begun().weather());
        if (SunGuard.at(moment).isSunUp()) {
            return Optional.of("By day, polewright stars lists stars to centre that are well away from the Sun.");
        }
        PointingLimits reach =
                PointingLimits.of(night.begun().site(), night.begun().rig(), night.horizon());
        List<AdvisedStar> candidates = BrightStars.upAt(moment).stream()
                .filter(star -> reach.canReach(star.place()))
                .filter(star -> model.centrings().stream()
                        .noneMatch(centring -> SkyOffset.between(centring.seen(), star.place())
                                        .distance()
                                        .compareTo(NEW_STAR)
                                < 0))
                .toList();
        List<HourAnglePlace> places =
                candidates.stream().map(AdvisedStar::place).toList();
        GoToSky sky = over(night, model);
        OptionalInt best = sky.best(model, places, CentredStar.USUAL_SIGMA);
        if (best.isEmpty()) {
            return Optional.empty();
        }
        AdvisedStar star = candidates.get(best.getAsInt());
        Angle then = sky.radius95(model.after(star.place(), CentredStar.USUAL_SIGMA));
        return Optional.of("NEXT  Centre " + star.name() + ", "
                + AngleWords.compassPoint(star.direction().azimuth()) + ", "
                + StarFindingWords.fists(star.direction().altitude()) + " up: then within about "
                + AngleWords.size(then) + ".");
    }

    /** One error of the mount: its name, value and uncertainty. */
    public record ErrorWords(String term, String value, String sigma) {}

    /** The errors determined by the stars. */
    public static List<ErrorWords> errors(PointingModel model) {
        return model.termEstimates().stream()
                .filter(TermEstimate::isSupported)
                .map(standing -> new ErrorWords(
                        standing.term().words(), signed(standing.value()), AngleWords.size(standing.sigma())))
                .toList();
    }

    /** Errors that are not constrained or not separable, and the axis from these stars. */
    public static List<String> notDetermined(NightPointing pointing, PointingModel model) {
        List<String> lines = new ArrayList<>();
        List<String> open = model.termEstimates().stream()
                .filter(standing -> !standing.isSupported())
                .map(standing -> standing.term().words())
                .toList();
        if (!open.isEmpty()) {
            lines.add("Not constrained: " + String.join("; ", open) + ".");
        }
        for (InseparableTerms group : model.inseparable()) {
            lines.add("Not separable with these stars: "
                    + group.terms().stream().map(PointingTerm::words).collect(Collectors.joining("; ")) + ".");
        }
        if (isTelling(pointing)) {
            lines.add(axis(model.axisOffset(), model.axisCovariance()));
        }
        return lines;
    }

    private static String signed(Angle angle) {
        return (angle.radians() < 0 ? "-" : "+") + AngleWords.size(angle);
    }

    private static String axis(AxisOffset offset, OffsetCovariance covariance) {
        return "Axis by these stars: " + FixWords.withUncertainty(offset, covariance) + ". It counts as a sighting.";
    }

    /** A centred star: its residual, and the go-to error there if it had been left out. */
    public record LeftWords(String star, String left, String without) {}

    /** Star by star. */
    public static List<LeftWords> left(NightPointing pointing, PointingModel model) {
        List<LeftWords> stars = new ArrayList<>();
        for (StarResidual residual : model.residuals()) {
            CentredStar star = pointing.checked().believed().get(stars.size());
            long seq = pointing.seqs().get(pointing.stars().indexOf(star));
            stars.add(new LeftWords(
                    "#" + seq + " " + star.star().label(),
                    offset(residual.offset()),
                    AngleWords.size(residual.crossValidated().distance())));
        }
        return stars;
    }

    private static String offset(SkyOffset offset) {
        return AngleWords.size(offset.west())
                + (offset.west().radians() < 0 ? " east, " : " west, ")
                + AngleWords.size(offset.north())
                + (offset.north().radians() < 0 ? " south" : " north");
    }

    /** Centrings that must be wrong, each with the change that would make it fit. */
    public static List<String> doubts(NightPointing pointing) {
        Doubt words = new Doubt(pointing);
        return pointing.checked().doubts().stream()
                .map(doubt -> doubt.accept(words))
                .toList();
    }

    private static String star(NightPointing pointing, int index) {
        return " #" + pointing.seqs().get(index) + " "
                + pointing.stars().get(index).star().label();
    }

    private static String stars(NightPointing pointing, List<Integer> indexes) {
        return indexes.stream().map(index -> star(pointing, index)).collect(Collectors.joining(","));
    }

    private static String likely(List<CentringMistake> mistakes) {
        return mistakes.isEmpty() ? "" : ". It would fit if " + mistakes.get(0).cause();
    }

    private static String shared(List<SharedMistake> mistakes) {
        return mistakes.isEmpty() ? "" : ". All would fit if " + mistakes.get(0).cause();
    }

    private record Doubt(NightPointing pointing) implements CentringDoubt.Visitor<String> {
        @Override
        public String oneWrong(CentringDoubt.OneWrong wrong) {
            return "DOUBT " + star(pointing, wrong.index()) + " contradicts the others and is not used"
                    + likely(wrong.mistakes()) + ". To remove it: polewright undo "
                    + pointing.seqs().get(wrong.index()) + ".";
        }

        @Override
        public String oneOf(CentringDoubt.OneOf one) {
            return "DOUBT " + stars(pointing, one.indexes())
                    + " contradict each other, and nothing shows which is wrong" + likely(one.mistakes())
                    + ". Centre one more star.";
        }

        @Override
        public String notUp(CentringDoubt.NotUp down) {
            return "DOUBT " + stars(pointing, down.indexes())
                    + (down.indexes().size() == 1 ? " was" : " were")
                    + " below the horizon at that time: star, time or site is wrong" + shared(down.mistakes())
                    + ".";
        }

        @Override
        public String allMistaken(CentringDoubt.AllMistaken all) {
            return "DOUBT  All of them contradict each other" + shared(all.mistakes()) + ".";
        }

        @Override
        public String zeroByHours(CentringDoubt.ZeroByHours hours) {
            return "NOTE  The zero of hour angle is off by " + Math.abs(hours.hours())
                    + (Math.abs(hours.hours()) == 1 ? " whole hour" : " whole hours")
                    + ". The clock, summer time or the longitude may be wrong, or the mount was never"
                    + " synchronised. Go-tos are"
                    + " right in any case.";
        }
    }
}
