package polewright.session.jsonl;

import java.time.Duration;
import java.time.Instant;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.SightingFormat;
import polewright.mount.rig.Rig;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.fields.BodyFields;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** A whole event: its number, its time of entry, its kind, and the fields of that kind. */
final class EventJson {
    private static final String INSTEAD_OF = "instead_of";

    private EventJson() {}

    static void write(FieldWriter out, LoggedEvent logged) {
        out.whole("seq", logged.seq())
                .text("at", logged.at().toString())
                .text("event", EventKind.of(logged.event()).word());
        writeBody(out, logged.event());
    }

    /**
     * Reads a whole event.
     *
     * @param seqWhenLeftOut the number of an event without one
     */
    static LoggedEvent read(FieldReader in, long seqWhenLeftOut, BodyNames names) {
        String word = in.text("event");
        EventKind kind = EventKind.ofWord(word)
                .orElseThrow(() -> in.refused("event", " is unknown", "use " + EventKind.words()));
        long seq = in.has("seq") ? in.whole("seq") : seqWhenLeftOut;
        Instant at = in.instant("at");
        return new LoggedEvent(seq, at, readBody(in, kind, at, names));
    }

    private static void writeBody(FieldWriter out, NightEvent event) {
        if (event instanceof NightEvent.Begun begun) {
            out.text("site_name", begun.siteName())
                    .object("site", begun.site(), SiteJson::write)
                    .object("weather", begun.weather(), SiteJson::writeWeather)
                    .object("rig", begun.rig(), RigJson::write)
                    .object("allowance", begun.allowance(), AllowanceJson::write);
        } else if (event instanceof NightEvent.SightingTaken taken) {
            taken.sighting().write(out);
        } else if (event instanceof NightEvent.ScrewsTurned turned) {
            TurnJson.write(out, turned);
        } else if (event instanceof NightEvent.TurnCorrected corrected) {
            out.whole("corrected_seq", corrected.seq());
            TurnJson.write(out, corrected.meant());
        } else if (event instanceof NightEvent.TurnNotLogged unlogged) {
            TurnJson.writeUnlogged(out, unlogged);
        } else if (event instanceof NightEvent.MeasurementCorrected corrected) {
            out.whole(INSTEAD_OF, corrected.seq());
            writeBody(out, corrected.meant());
        } else if (event instanceof NightEvent.RigCorrected corrected) {
            RigCorrectionJson.write(out, corrected.correction());
        } else if (event instanceof NightEvent.SiteCorrected corrected) {
            out.object("site", corrected.site(), SiteJson::write);
        } else if (event instanceof NightEvent.ClockCorrected corrected) {
            out.whole("first_seq", corrected.seq())
                    .whole("last_seq", corrected.last())
                    .whole("shift_s", corrected.shift().toSeconds());
        } else if (event instanceof NightEvent.AllowanceSet set) {
            out.object("allowance", set.allowance(), AllowanceJson::write);
        } else if (event instanceof NightEvent.WorkSet set) {
            out.object("work", set.work(), WorkJson::write);
        } else if (event instanceof NightEvent.StarCentred star) {
            CentringJson.write(out, star.centred());
        } else if (event instanceof NightEvent.HorizonSet set) {
            HorizonJson.write(out, set.horizon());
        } else if (event instanceof NightEvent.TargetWanted wanted) {
            BodyFields.write(out, wanted.target());
        } else if (event instanceof NightEvent.SightingSkipped skipped) {
            SkipJson.write(out, skipped.skip());
        } else if (event instanceof NightEvent.Noted noted) {
            out.text("text", noted.text());
        } else if (event instanceof NightEvent.Withdrawn withdrawn) {
            out.whole("withdrawn_seq", withdrawn.seq());
        } else if (!(event instanceof NightEvent.Clamped
                || event instanceof NightEvent.Unclamped
                || event instanceof NightEvent.Knocked)) {
            throw new IllegalStateException("no JSON for " + event.getClass());
        }
    }

    private static NightEvent readBody(FieldReader in, EventKind kind, Instant at, BodyNames names) {
        return switch (kind) {
            case BEGIN -> begun(in);
            case COMPASS -> sighted(in, SightingFormat.COMPASS, at, names);
            case SCALE -> sighted(in, SightingFormat.SCALE, at, names);
            case BEARING -> sighted(in, SightingFormat.BEARING, at, names);
            case SHADOW -> sighted(in, SightingFormat.SHADOW, at, names);
            case ALTITUDE -> sighted(in, SightingFormat.ALTITUDE, at, names);
            case STILL_POINT -> sighted(in, SightingFormat.STILL_POINT, at, names);
            case DRIFT -> sighted(in, SightingFormat.DRIFT, at, names);
            case FRAMES -> sighted(in, SightingFormat.FRAMES, at, names);
            case FIELD_DRIFT -> sighted(in, SightingFormat.FIELD_DRIFT, at, names);
            case TURN -> TurnJson.read(in);
            case CORRECT_TURN -> new NightEvent.TurnCorrected(in.whole("corrected_seq"), TurnJson.read(in));
            case UNLOGGED_TURN -> TurnJson.readUnlogged(in);
            case CORRECT_CLOCK -> clock(in);
            case RIG -> new NightEvent.RigCorrected(RigCorrectionJson.read(in));
            case SITE -> new NightEvent.SiteCorrected(in.object("site", SiteJson::read));
            case CLAMP -> new NightEvent.Clamped();
            case UNCLAMP -> new NightEvent.Unclamped();
            case KNOCK -> new NightEvent.Knocked();
            case ALLOW -> new NightEvent.AllowanceSet(in.object("allowance", AllowanceJson::read));
            case WORK -> new NightEvent.WorkSet(in.object("work", WorkJson::read));
            case CENTRE -> measured(in, true, new NightEvent.StarCentred(CentringJson.read(in, at, names)));
            case HORIZON -> new NightEvent.HorizonSet(HorizonJson.read(in));
            case TARGET -> new NightEvent.TargetWanted(BodyFields.read(in, names));
            case SKIP -> new NightEvent.SightingSkipped(SkipJson.read(in, names));
            case NOTE -> new NightEvent.Noted(in.text("text"));
            case WITHDRAW -> new NightEvent.Withdrawn(in.whole("withdrawn_seq"));
        };
    }

    private static NightEvent sighted(FieldReader in, SightingFormat format, Instant at, BodyNames names) {
        return measured(in, format != SightingFormat.FRAMES, new NightEvent.SightingTaken(format.read(in, at, names)));
    }

    /** A measurement, or one that replaces another; the replacement was made before it is entered. */
    private static NightEvent measured(FieldReader in, boolean isTimeTyped, NightEvent.Measurement measurement) {
        if (!in.has(INSTEAD_OF)) {
            return measurement;
        }
        long replaced = in.whole(INSTEAD_OF);
        if (isTimeTyped && !in.has("seen_at")) {
            throw in.refused(INSTEAD_OF, " has no seen_at with it", "add when it was seen");
        }
        return new NightEvent.MeasurementCorrected(replaced, measurement);
    }

    private static NightEvent clock(FieldReader in) {
        long first = in.whole("first_seq");
        long last = in.whole("last_seq");
        double shift = in.number("shift_s");
        if (shift != Math.rint(shift)) {
            throw in.refused("shift_s", " is not a whole number of seconds", "leave out the fraction");
        }
        return in.made(() -> new NightEvent.ClockCorrected(first, last, Duration.ofSeconds((long) shift)));
    }

    private static NightEvent.Begun begun(FieldReader in) {
        String siteName = in.text("site_name");
        Site site = in.object("site", SiteJson::read);
        Weather weather = in.has("weather")
                ? in.object("weather", SiteJson::readWeather)
                : Weather.standardAt(site.heightMetres());
        Rig rig = in.has("rig") ? in.object("rig", RigJson::read) : Rig.typicalForkOnWedge();
        DiscAllowance allowance =
                in.has("allowance") ? in.object("allowance", AllowanceJson::read) : DiscAllowance.VISUAL;
        return new NightEvent.Begun(siteName, site, weather, rig, allowance);
    }
}
