package polewright.night.jsonl;

import polewright.axis.allowance.Allowance;
import polewright.axis.allowance.DiscAllowance;
import polewright.sky.angle.Angle;

/** The allowance, tagged by its shape so that other shapes can follow. */
final class AllowanceJson {
    private AllowanceJson() {}

    private enum Shape {
        DISC
    }

    static void write(FieldWriter out, Allowance allowance) {
        if (allowance instanceof DiscAllowance disc) {
            out.word("shape", Shape.DISC).angle("radius_arcmin", disc.radius());
            return;
        }
        throw new IllegalStateException("no JSON for " + allowance.getClass());
    }

    static Allowance read(FieldReader in) {
        return switch (in.choice("shape", Shape.class)) {
            case DISC -> {
                Angle radius = in.angle("radius_arcmin");
                yield in.made(() -> new DiscAllowance(radius));
            }
        };
    }
}
