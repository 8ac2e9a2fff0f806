package polewright.session.jsonl;

import java.util.Optional;
import polewright.mount.rig.ForkClearance;
import polewright.mount.rig.TravelLimits;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** The travel limits of a mount. */
final class TravelJson {
    private TravelJson() {}

    static void write(FieldWriter out, TravelLimits travel) {
        out.angle("east_limit_deg", travel.eastLimit())
                .angle("west_limit_deg", travel.westLimit())
                .angle("lowest_altitude_deg", travel.lowestAltitude());
        travel.fork().ifPresent(fork -> out.object("fork", fork, TravelJson::writeFork));
    }

    static TravelLimits read(FieldReader in) {
        Angle east = in.angle("east_limit_deg", TravelLimits.USUAL.eastLimit());
        Angle west = in.angle("west_limit_deg", TravelLimits.USUAL.westLimit());
        Angle lowest = in.angle("lowest_altitude_deg", TravelLimits.USUAL.lowestAltitude());
        Optional<ForkClearance> fork =
                in.has("fork") ? Optional.of(in.object("fork", TravelJson::readFork)) : Optional.empty();
        return in.made(() -> new TravelLimits(east, west, lowest, fork));
    }

    private static void writeFork(FieldWriter out, ForkClearance fork) {
        out.number("arm_depth_mm", fork.armDepthMm())
                .number("behind_mm", fork.behindMm())
                .number("ahead_mm", fork.aheadMm())
                .number("back_radius_mm", fork.backRadiusMm())
                .number("front_radius_mm", fork.frontRadiusMm());
    }

    private static ForkClearance readFork(FieldReader in) {
        double depth = in.number("arm_depth_mm");
        double behind = in.number("behind_mm");
        double ahead = in.number("ahead_mm", 0);
        double back = in.number("back_radius_mm", 0);
        double front = in.number("front_radius_mm", 0);
        return in.made(() -> new ForkClearance(depth, behind, ahead, back, front));
    }
}
