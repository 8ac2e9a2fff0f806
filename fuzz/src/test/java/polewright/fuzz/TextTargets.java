package polewright.fuzz;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import polewright.alignment.allowance.DiscAllowance;
import polewright.drawing.Palette;
import polewright.drawing.strip.HorizonDrawing;
import polewright.mount.pointing.CentredStar;
import polewright.mount.rig.Rig;
import polewright.operations.input.BodyFinder;
import polewright.operations.input.CentringTable;
import polewright.operations.input.SkylineInput;
import polewright.session.NightPointing;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.session.jsonl.RigText;
import polewright.sky.angle.Angle;
import polewright.sky.fields.BodyNames;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Text written by a person or another program: it is refused, or it can be stored, read back, and used. */
final class TextTargets {
    private static final Instant DUSK = Instant.parse("2026-01-15T17:30:00Z");
    private static final Site LARKFELL = Site.ofDegrees(54.6, -2.9, 240);
    private static final NightEvent.Begun BEGUN = begun(Rig.typicalForkOnWedge());

    private TextTargets() {}

    /** A night in JSON Lines, as {@code log import} and {@code replay} take it. */
    static void jsonLines(byte[] text) {
        List<LoggedEvent> night = events(text(text), new BodyFinder());
        requireTheSame(night, events(written(night), BodyNames.NONE));
        NightState.of(night);
    }

    /** A rig's file, as {@code begin --rig} takes it. */
    static void rig(byte[] text) {
        Rig rig = RigText.read(text(text));
        if (!rig.equals(RigText.read(RigText.write(rig)))) {
            throw new Finding("the rig does not read back as it was written");
        }
        NightState.of(List.of(new LoggedEvent(1, DUSK, begun(rig))));
    }

    /** A table of centrings, as {@code centre --csv} takes it. */
    static void centrings(byte[] text) {
        List<LoggedEvent> night = new ArrayList<>();
        night.add(new LoggedEvent(1, DUSK, BEGUN));
        for (CentredStar star : CentringTable.read(text(text))) {
            night.add(new LoggedEvent(night.size() + 1, star.at(), new NightEvent.StarCentred(star)));
        }
        requireTheSame(night, events(written(night), BodyNames.NONE));
        NightPointing.of(NightState.of(night));
    }

    /** A horizon, as {@code horizon --csv} takes it. */
    static void skyline(byte[] text) {
        Horizon horizon = SkylineInput.ofCsv(text(text));
        List<LoggedEvent> night =
                List.of(new LoggedEvent(1, DUSK, BEGUN), new LoggedEvent(2, DUSK, new NightEvent.HorizonSet(horizon)));
        requireTheSame(night, events(written(night), BodyNames.NONE));
        for (int azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 7) {
            double altitudeDeg = horizon.altitudeAt(Angle.ofDegrees(azimuthDeg)).degrees();
            if (!(altitudeDeg >= -90 && altitudeDeg <= 90)) {
                throw new Finding("the skyline is " + altitudeDeg + " degrees high at azimuth " + azimuthDeg);
            }
        }
        HorizonDrawing.svg(horizon, BEGUN.site(), BEGUN.rig(), Palette.LIGHT);
    }

    private static NightEvent.Begun begun(Rig rig) {
        return new NightEvent.Begun(
                "Larkfell", LARKFELL, Weather.standardAt(LARKFELL.heightMetres()), rig, DiscAllowance.VISUAL);
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private static List<LoggedEvent> events(String text, BodyNames names) {
        try {
            return JsonLines.read(new StringReader(text), names).orThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String written(List<LoggedEvent> night) {
        StringBuilder lines = new StringBuilder();
        try {
            JsonLines.write(night, lines);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return lines.toString();
    }

    private static void requireTheSame(List<LoggedEvent> night, List<LoggedEvent> readBack) {
        if (!night.equals(readBack)) {
            throw new Finding("the night does not read back as it was written: " + night + " became " + readBack);
        }
    }
}
