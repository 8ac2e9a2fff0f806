package polewright.operations;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.allowance.DiscAllowance;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.session.event.LoggedEvent;
import polewright.session.jsonl.JsonLines;
import polewright.simulation.HiddenWedge;
import polewright.simulation.RehearsedNight;
import polewright.sky.atlas.NamedStars;
import polewright.sky.place.Site;

/** Nights on a pier at Larkfell that moves between them, played by following the advice and written to files. */
public final class PierNights {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Instant FIRST = Instant.parse("2025-01-10T20:00:00Z");
    private static final Rig RIG =
            Rig.typicalForkOnWedge().withCameras(List.of(new Camera("guide camera", 240, 3.75, 1280, 960)));

    private PierNights() {}

    /**
     * Plays the nights and writes them.
     *
     * @param driftBetween movement of the axis from each night to the next, arcminutes
     * @param bumpAfter the night after which the pier is also bumped by 12′; 0 for none
     * @return one file per night, in order
     */
    public static List<Path> written(Path folder, int count, int daysBetween, AxisOffset driftBetween, int bumpAfter) {
        List<Path> files = new ArrayList<>();
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(77);
        HiddenWedge wedge = HiddenWedge.of(LARKFELL, RIG, AxisOffset.ofArcminutes(28, -17), random);
        for (int i = 0; i < count; i++) {
            Instant at = FIRST.plusSeconds(86_400L * daysBetween * i);
            RehearsedNight.Setting setting = new RehearsedNight.Setting(
                    "Larkfell",
                    wedge,
                    DiscAllowance.VISUAL,
                    at,
                    NamedStars.bundled().all(),
                    List.of(SightingKind.FRAMES));
            List<RehearsedNight.Moment> played =
                    RehearsedNight.play(setting, java.util.Optional.empty(), moment -> {}, random);
            files.add(write(
                    folder.resolve("pier-night-" + (i + 1) + ".jsonl"),
                    played.stream().map(RehearsedNight.Moment::event).toList()));
            AxisOffset to = played.get(played.size() - 1).wedge().offset().plus(driftBetween);
            wedge = pointing(
                    played.get(played.size() - 1).wedge(),
                    i + 1 == bumpAfter ? to.plus(AxisOffset.ofArcminutes(-10, 7)) : to);
        }
        return files;
    }

    private static Path write(Path file, List<LoggedEvent> events) {
        try {
            StringBuilder text = new StringBuilder();
            JsonLines.write(events, text);
            return Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static HiddenWedge pointing(HiddenWedge wedge, AxisOffset offset) {
        return new HiddenWedge(
                wedge.site(),
                wedge.rig(),
                AxisPointing.of(wedge.site(), offset).elevatedEnd(),
                wedge.azimuthAxis(),
                wedge.azimuthFactor(),
                wedge.altitudeFactor(),
                wedge.azimuthBacklash(),
                wedge.altitudeBacklash());
    }
}
