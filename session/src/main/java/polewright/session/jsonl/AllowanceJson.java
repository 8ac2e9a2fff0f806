package polewright.session.jsonl;

import polewright.alignment.allowance.DiscAllowance;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** A given tolerance, tagged by its shape so that other shapes can be added. */
final class AllowanceJson {
    private AllowanceJson() {}

    private enum Shape {
        DISC
    }

    static void write(FieldWriter out, DiscAllowance disc) {
        out.word("shape", Shape.DISC).angle("radius_arcmin", disc.radius());
    }

    static DiscAllowance read(FieldReader in) {
        return switch (in.choice("shape", Shape.class)) {
            case DISC -> {
                Angle radius = in.angle("radius_arcmin");
                yield in.made(() -> new DiscAllowance(radius));
            }
        };
    }
}
