package polewright.cli;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.input.BodyFinder;
import polewright.operations.input.UtcInput;
import polewright.report.text.EventWords;
import polewright.report.text.PoleStarWords;
import polewright.report.text.SkipWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.session.event.Skip;
import polewright.sky.body.SkyBody;

@Command(
        name = "skip",
        description = "Log that the advised sighting cannot be taken, and why. The next best is then advised.",
        footer = {
            "",
            "For example:",
            "  polewright skip cloud",
            "  polewright skip not-found --sighting drift --star capella",
            "  polewright skip no-optic --sighting drift --optic reticle"
        })
final class SkipCommand extends AppendingCommand {
    @Parameters(
            paramLabel = "REASON",
            description =
                    "not-found: the star cannot be found. not-in-view: the pole star is outside the field. hidden:"
                            + " a tree or roof is in the way. cloud: cloud covers it. no-optic: the eyepiece or"
                            + " finder is missing."
                            + " no-instrument: no compass, scale, plumb line or camera.")
    private Skip.Reason because;

    @Option(
            names = "--sighting",
            paramLabel = "KIND",
            description = "compass, scale, shadow, still-point, drift or frames. Default: what is advised now.")
    private Skip.@Nullable Sighting sighting;

    @Option(
            names = "--star",
            paramLabel = "STAR",
            converter = BodyFinder.class,
            description = "The star. Default: the one advised.")
    private @Nullable SkyBody star;

    @Option(names = "--optic", paramLabel = "NAME", description = "The missing optic. Default: the one advised.")
    private @Nullable String optic;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            converter = UtcInput.class,
            description = "When, with time zone: 2026-11-25T20:00Z. Default: now.")
    private @Nullable Instant at;

    private @Nullable Skip skip;

    SkipCommand(Workbench workbench) {
        super(workbench, "skipped");
    }

    @Override
    Optional<Instant> given() {
        return Optional.ofNullable(at);
    }

    @Override
    Instant happened(Instant now) {
        return at == null ? now : at;
    }

    @Override
    NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
        Skip.Sighting kind = sighting == null
                ? advised(before)
                        .map(take -> Skip.Sighting.of(take.kind()))
                        .orElseThrow(() ->
                                new OperationFailed("no sighting is advised now. Name the one that cannot be taken,"
                                        + " such as --sighting drift --star capella."))
                : sighting;
        Optional<Advice.TakeSighting> same = advised(before).filter(take -> Skip.Sighting.of(take.kind()) == kind);
        Rig rig = before.situation().rig();
        Skip said = new Skip(kind, because, star(kind, same), optic(same, rig));
        skip = said;
        return new NightEvent.SightingSkipped(said);
    }

    private static Optional<Advice.TakeSighting> advised(NightState night) {
        return Optional.of(night.advice())
                .filter(Advice.TakeSighting.class::isInstance)
                .map(Advice.TakeSighting.class::cast);
    }

    private Optional<SkyBody> star(Skip.Sighting kind, Optional<Advice.TakeSighting> same) {
        if (star != null || !kind.isOfStar() || because == Skip.Reason.NO_OPTIC) {
            return Optional.ofNullable(star);
        }
        return same.flatMap(Advice.TakeSighting::star).map(AdvisedStar::name).map(BodyFinder::named);
    }

    private Optional<String> optic(Optional<Advice.TakeSighting> same, Rig rig) {
        if (because != Skip.Reason.NO_OPTIC) {
            return Optional.ofNullable(optic);
        }
        if (optic == null) {
            return same.flatMap(take -> take.kind().optic(rig)).map(Optic::name);
        }
        String named = optic;
        return Optional.of(rig.optic(named)
                .map(Optic::name)
                .orElseThrow(() -> new OperationFailed("the rig has no optic called '" + named + "'"
                        + (rig.optics().isEmpty() ? "." : ". It has " + names(rig) + "."))));
    }

    private static String names(Rig rig) {
        return String.join(
                ", ",
                rig.optics().stream()
                        .map(one -> one.name().toLowerCase(Locale.ROOT))
                        .toList());
    }

    @Override
    String logged() {
        return skip == null ? super.logged() : EventWords.of(new NightEvent.SightingSkipped(skip));
    }

    @Override
    void afterwards(NightState night) {
        if (!output().isJson() && because == Skip.Reason.NOT_IN_VIEW) {
            output().say(bench(), PoleStarWords.of(night));
        }
    }

    @Override
    List<String> notes() {
        return skip == null ? List.of() : List.of("NOTE  " + SkipWords.consequence(skip));
    }
}
