package polewright.session.jsonl;

import polewright.alignment.sighting.ReadLength;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;

/** Properties of a view: its orientation, directions on its clock face, lengths in it. */
final class ViewJson {
    private ViewJson() {}

    static void write(FieldWriter out, View view) {
        out.word("orientation", view.orientation()).angle("turned_deg", view.turned());
    }

    static View read(FieldReader in) {
        return new View(in.choice("orientation", Orientation.class), in.angle("turned_deg", Angle.ZERO));
    }

    static ClockDirection readClock(FieldReader in, String key) {
        double hours = in.number(key);
        return in.made(() -> new ClockDirection(hours));
    }

    /** Written next to the other keys of its event: a sighting has one length. */
    static void writeLength(FieldWriter out, ReadLength length) {
        out.number("count", length.count()).word("unit", length.unit());
        switch (length.unit()) {
            case FIELDS -> out.angle("field_deg", length.perUnit());
            case DIVISIONS, PIXELS -> out.angle("per_unit_arcsec", length.perUnit());
            case ARCSECONDS -> {
                // An arcsecond needs no scale.
            }
        }
    }

    static ReadLength readLength(FieldReader in) {
        double count = in.number("count");
        ReadLength.Unit unit = in.choice("unit", ReadLength.Unit.class);
        Angle perUnit = switch (unit) {
            case FIELDS -> in.angle("field_deg");
            case DIVISIONS, PIXELS -> in.angle("per_unit_arcsec");
            case ARCSECONDS -> Angle.ofArcseconds(1);
        };
        return in.made(() -> new ReadLength(count, unit, perUnit));
    }
}
