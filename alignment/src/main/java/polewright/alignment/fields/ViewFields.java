package polewright.alignment.fields;

import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;

/** Properties of a view: its orientation, and directions on its clock face. */
public final class ViewFields {
    private ViewFields() {}

    public static void write(FieldWriter out, View view) {
        out.word("orientation", view.orientation()).angle("turned_deg", view.turned());
    }

    public static View read(FieldReader in) {
        return new View(in.choice("orientation", Orientation.class), in.angle("turned_deg", Angle.ZERO));
    }

    public static ClockDirection readClock(FieldReader in, String key) {
        double hours = in.number(key);
        return in.made(() -> new ClockDirection(hours));
    }
}
