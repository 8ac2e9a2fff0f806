package polewright.cli;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.alignment.sighting.Sighting;
import polewright.operations.Workbench;
import polewright.operations.input.UtcInput;
import polewright.report.text.EventWords;
import polewright.report.text.ImplausibleReadingWords;
import polewright.session.ImplausibleReading;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;

/** Common to all sightings: a time and a kind. */
abstract class SightCommand extends AppendingCommand {
    @Option(
            names = "--at",
            paramLabel = "TIME",
            converter = UtcInput.class,
            description = "When it was taken (for a drift, when it began), with time zone. Default: now (a drift ended"
                    + " now).")
    private @Nullable Instant at;

    @Mixin
    private InsteadOfOption insteadOf;

    @Mixin
    private AsTypedOption asTyped;

    private String kind = "";

    SightCommand(Workbench workbench) {
        super(workbench, "sighting");
    }

    abstract Sighting sighting(Workbench bench, NightEvent.Begun begun);

    /** Whether not to ask for confirmation. */
    boolean isMeantAsTyped() {
        return asTyped.isConfirmed();
    }

    Instant at(Workbench bench) {
        return at == null ? replacedAt().orElseGet(bench::now) : at;
    }

    private Optional<Instant> replacedAt() {
        return insteadOf.replaced(night()).map(one -> one.measurement().seenAt());
    }

    /** When a drift began: as given, or its length ago. */
    Instant startOf(Workbench bench, Duration length) {
        return at == null ? replacedAt().orElseGet(() -> bench.now().minus(length)) : at;
    }

    @Override
    final Optional<Instant> given() {
        return Optional.ofNullable(at);
    }

    @Override
    final NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
        Sighting sighting = sighting(bench, begun);
        kind = EventWords.kind(sighting.kind());
        if (!isMeantAsTyped()) {
            ImplausibleReading.of(sighting, begun, before.fix().state().axis()).ifPresent(far -> {
                throw new ConfirmationNeeded(
                        ImplausibleReadingWords.what(sighting, far, begun.site()), ImplausibleReadingWords.check(far));
            });
        }
        return insteadOf.event(new NightEvent.SightingTaken(sighting), night());
    }

    @Override
    final String logged() {
        return kind + insteadOf.words();
    }

    static Angle degrees(@Nullable Double given, Angle usual) {
        return given == null ? usual : Angle.ofDegrees(given);
    }
}
