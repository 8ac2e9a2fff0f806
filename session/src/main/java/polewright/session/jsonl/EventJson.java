package polewright.session.jsonl;

import java.time.Duration;
import java.time.Instant;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.SightingFormat;
import polewright.mount.rig.Rig;
import polewright.session.event.Correction;
import polewright.session.event.EventKind;
import polewright.session.event.EventVisitor;
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
        logged.event().accept(new Body(out));
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

    /** The fields of each kind; {@link #readBody} is the counterpart. */
    private record Body(FieldWriter out) implements EventVisitor<FieldWriter> {
        @Override
        public FieldWriter begun(NightEvent.Begun event) {
            return out.text("site_name", event.siteName())
                    .object("site", event.site(), SiteJson::write)
                    .object("weather", event.weather(), SiteJson::writeWeather)
                    .object("rig", event.rig(), RigJson::write)
                    .object("allowance", event.allowance(), AllowanceJson::write);
        }

        @Override
        public FieldWriter sightingTaken(NightEvent.SightingTaken event) {
            event.sighting().write(out);
            return out;
        }

        @Override
        public FieldWriter screwsTurned(NightEvent.ScrewsTurned event) {
            TurnJson.write(out, event);
            return out;
        }

        @Override
        public FieldWriter turnCorrected(Correction.TurnCorrected event) {
            out.whole("corrected_seq", event.seq());
            return screwsTurned(event.meant());
        }

        @Override
        public FieldWriter turnNotLogged(Correction.TurnNotLogged event) {
            TurnJson.writeUnlogged(out, event);
            return out;
        }

        @Override
        public FieldWriter measurementCorrected(Correction.MeasurementCorrected event) {
            out.whole(INSTEAD_OF, event.seq());
            return event.meant().accept(this);
        }

        @Override
        public FieldWriter rigCorrected(Correction.RigCorrected event) {
            RigCorrectionJson.write(out, event.correction());
            return out;
        }

        @Override
        public FieldWriter siteCorrected(Correction.SiteCorrected event) {
            return out.object("site", event.site(), SiteJson::write);
        }

        @Override
        public FieldWriter clockCorrected(Correction.ClockCorrected event) {
            return out.whole("first_seq", event.seq())
                    .whole("last_seq", event.last())
                    .whole("shift_s", event.shift().toSeconds());
        }

        @Override
        public FieldWriter clamped(NightEvent.Clamped event) {
            return out;
        }

        @Override
        public FieldWriter unclamped(NightEvent.Unclamped event) {
            return out;
        }

        @Override
        public FieldWriter knocked(NightEvent.Knocked event) {
            return out;
        }

        @Override
        public FieldWriter allowanceSet(NightEvent.AllowanceSet event) {
            return out.object("allowance", event.allowance(), AllowanceJson::write);
        }

        @Override
        public FieldWriter workSet(NightEvent.WorkSet event) {
            return out.object("work", event.work(), WorkJson::write);
        }

        @Override
        public FieldWriter starCentred(NightEvent.StarCentred event) {
            CentringJson.write(out, event.centred());
            return out;
        }

        @Override
        public FieldWriter horizonSet(NightEvent.HorizonSet event) {
            HorizonJson.write(out, event.horizon());
            return out;
        }

        @Override
        public FieldWriter targetWanted(NightEvent.TargetWanted event) {
            BodyFields.write(out, event.target());
            return out;
        }

        @Override
        public FieldWriter sightingSkipped(NightEvent.SightingSkipped event) {
            SkipJson.write(out, event.skip());
            return out;
        }

        @Override
        public FieldWriter noted(NightEvent.Noted event) {
            return out.text("text", event.text());
        }

        @Override
        public FieldWriter withdrawn(NightEvent.Withdrawn event) {
            return out.whole("withdrawn_seq", event.seq());
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
            case TRAIL -> sighted(in, SightingFormat.TRAIL, at, names);
            case FRAMES -> sighted(in, SightingFormat.FRAMES, at, names);
            case FIELD_DRIFT -> sighted(in, SightingFormat.FIELD_DRIFT, at, names);
            case TURN -> TurnJson.read(in);
            case CORRECT_TURN -> new Correction.TurnCorrected(in.whole("corrected_seq"), TurnJson.read(in));
            case UNLOGGED_TURN -> TurnJson.readUnlogged(in);
            case CORRECT_CLOCK -> clock(in);
            case RIG -> new Correction.RigCorrected(RigCorrectionJson.read(in));
            case SITE -> new Correction.SiteCorrected(in.object("site", SiteJson::read));
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
        return new Correction.MeasurementCorrected(replaced, measurement);
    }

    private static NightEvent clock(FieldReader in) {
        long first = in.whole("first_seq");
        long last = in.whole("last_seq");
        double shift = in.number("shift_s");
        if (shift != Math.rint(shift)) {
            throw in.refused("shift_s", " is not a whole number of seconds", "leave out the fraction");
        }
        return in.made(() -> new Correction.ClockCorrected(first, last, Duration.ofSeconds((long) shift)));
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
