package polewright.operations.night;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.operations.OperationFailed;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.input.BodyFinder;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.session.event.Skip;
import polewright.sky.body.SkyBody;

/** Logs that the advised sighting cannot be taken. */
public final class SkipAction {
    private static final Argument<Skip.Reason> REASON = Argument.positional(
                    "reason",
                    "Why",
                    "",
                    Choice.of(
                            Skip.Reason.class,
                            "REASON",
                            "",
                            Map.of(
                                    Skip.Reason.NOT_FOUND, "the star cannot be found",
                                    Skip.Reason.NOT_IN_VIEW, "the pole star is not in view",
                                    Skip.Reason.HIDDEN, "a tree or roof is in the way",
                                    Skip.Reason.CLOUD, "cloud",
                                    Skip.Reason.NO_OPTIC, "the eyepiece or finder is missing",
                                    Skip.Reason.NO_INSTRUMENT, "no compass, scale, plumb line or camera")))
            .required();
    private static final Argument<Skip.Sighting> SIGHTING = Argument.option(
            "sighting",
            "Which sighting",
            "",
            Choice.of(
                    Skip.Sighting.class,
                    "KIND",
                    "the one advised now",
                    Map.of(
                            Skip.Sighting.COMPASS, "compass",
                            Skip.Sighting.SCALE, "level and scale",
                            Skip.Sighting.SHADOW, "shadow",
                            Skip.Sighting.STILL_POINT, "centre of rotation",
                            Skip.Sighting.DRIFT, "drift",
                            Skip.Sighting.FRAMES, "camera frames")));
    private static final Argument<SkyBody> STAR = Argument.option(
                    "star", "Star", "", new Words<>("STAR", BodyFinder::named))
            .otherwise("the one advised");
    private static final Argument<String> OPTIC = Argument.option(
                    "optic", "Missing optic", "Only if an eyepiece or finder is missing.", Words.plain("NAME"))
            .otherwise("the one advised");

    public static final Action SKIP = Action.of(
                    "skip",
                    List.of("skip"),
                    "A sighting is not possible",
                    "The next best one is advised instead.",
                    SkipAction::skipped)
            .taking(REASON, SIGHTING, STAR, OPTIC)
            .at(Action.Timing.DONE)
            .forExample("", "cloud")
            .forExample("", "not-found --sighting drift --star capella")
            .forExample("", "no-optic --sighting drift --optic reticle");

    private SkipAction() {}

    private static List<NightEvent> skipped(Entries entries, ActionContext context) {
        NightState before = context.before();
        Skip.Reason reason = entries.of(REASON);
        Skip.Sighting kind = entries.given(SIGHTING)
                .or(() -> advised(before).map(take -> Skip.Sighting.of(take.kind())))
                .orElseThrow(() -> new OperationFailed("no sighting is advised now. Name the one that cannot be taken,"
                        + " with {sighting} and {star}."));
        Optional<Advice.TakeSighting> same = advised(before).filter(take -> Skip.Sighting.of(take.kind()) == kind);
        Rig rig = before.situation().rig();
        return List.of(new NightEvent.SightingSkipped(
                new Skip(kind, reason, star(entries, kind, same), optic(entries, same, rig))));
    }

    private static Optional<Advice.TakeSighting> advised(NightState night) {
        return Optional.of(night.advice())
                .filter(Advice.TakeSighting.class::isInstance)
                .map(Advice.TakeSighting.class::cast);
    }

    private static Optional<SkyBody> star(Entries entries, Skip.Sighting kind, Optional<Advice.TakeSighting> same) {
        if (!kind.isOfStar() || entries.of(REASON) == Skip.Reason.NO_OPTIC) {
            return entries.given(STAR);
        }
        return entries.given(STAR)
                .or(() -> same.flatMap(Advice.TakeSighting::star)
                        .map(AdvisedStar::name)
                        .map(BodyFinder::named));
    }

    private static Optional<String> optic(Entries entries, Optional<Advice.TakeSighting> same, Rig rig) {
        Optional<String> named = entries.given(OPTIC);
        if (entries.of(REASON) != Skip.Reason.NO_OPTIC) {
            return named;
        }
        return named.isEmpty()
                ? same.flatMap(take -> take.kind().optic(rig)).map(Optic::name)
                : named.map(name -> rig.optic(name)
                        .map(Optic::name)
                        .orElseThrow(() -> new OperationFailed("the rig has no optic called '" + name + "'"
                                + (rig.optics().isEmpty() ? "." : ". It has " + names(rig) + "."))));
    }

    private static String names(Rig rig) {
        return String.join(
                ", ",
                rig.optics().stream()
                        .map(one -> one.name().toLowerCase(Locale.ROOT))
                        .toList());
    }
}
