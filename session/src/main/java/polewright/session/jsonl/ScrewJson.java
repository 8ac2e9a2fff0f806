package polewright.session.jsonl;

import polewright.mount.rig.FinishSense;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** A screw, its geometry tagged by its kind. */
final class ScrewJson {
    private ScrewJson() {}

    private enum GeometryKind {
        DEGREES_PER_TURN,
        PUSH_SCREW,
        TURNBUCKLE
    }

    static void write(FieldWriter out, Screw screw) {
        out.object("geometry", screw.geometry(), ScrewJson::writeGeometry)
                .word("clockwise", screw.clockwise())
                .number("gain_sigma_fraction", screw.relativeGainSigma())
                .number("hand_sigma_turns", screw.handSigmaTurns())
                .number("backlash_turns", screw.backlashTurns())
                .word("finish", screw.finish())
                .flag("clockwise_assumed", screw.isSenseAssumed());
    }

    /**
     * A screw as written.
     *
     * @param isMarked whether it states if its direction is assumed: those of older logs do not
     */
    record Written(Screw screw, boolean isMarked) {}

    /** Missing values have the defaults of a screw known only roughly. */
    static Written read(FieldReader in) {
        Screw rough =
                Screw.rough(in.object("geometry", ScrewJson::readGeometry), in.choice("clockwise", ScrewSense.class));
        double gain = in.number("gain_sigma_fraction", rough.relativeGainSigma());
        double hand = in.number("hand_sigma_turns", rough.handSigmaTurns());
        double backlash = in.number("backlash_turns", rough.backlashTurns());
        FinishSense finish = in.has("finish") ? in.choice("finish", FinishSense.class) : rough.finish();
        boolean isMarked = in.has("clockwise_assumed");
        boolean isAssumed = isMarked && in.flag("clockwise_assumed");
        Screw screw =
                in.made(() -> new Screw(rough.geometry(), rough.clockwise(), gain, hand, backlash, finish, isAssumed));
        return new Written(screw, isMarked);
    }

    static void writeGeometry(FieldWriter out, ScrewGeometry geometry) {
        if (geometry instanceof ScrewGeometry.DegreesPerTurn told) {
            out.word("kind", GeometryKind.DEGREES_PER_TURN).angle("per_turn_deg", told.perTurn());
        } else if (geometry instanceof ScrewGeometry.PushScrew push) {
            out.word("kind", GeometryKind.PUSH_SCREW)
                    .number("thread_pitch_mm", push.threadPitchMm())
                    .number("arm_mm", push.armMm());
        } else if (geometry instanceof ScrewGeometry.Turnbuckle turnbuckle) {
            out.word("kind", GeometryKind.TURNBUCKLE)
                    .number("hinge_to_lower_mm", turnbuckle.hingeToLowerMm())
                    .number("hinge_to_upper_mm", turnbuckle.hingeToUpperMm())
                    .number("length_at_reference_mm", turnbuckle.lengthAtReferenceMm())
                    .angle("reference_altitude_deg", turnbuckle.referenceAltitude())
                    .number("lead_per_turn_mm", turnbuckle.leadPerTurnMm());
        } else {
            throw new IllegalStateException("no JSON for " + geometry.getClass());
        }
    }

    static ScrewGeometry readGeometry(FieldReader in) {
        return switch (in.choice("kind", GeometryKind.class)) {
            case DEGREES_PER_TURN -> {
                Angle perTurn = in.angle("per_turn_deg");
                yield in.made(() -> new ScrewGeometry.DegreesPerTurn(perTurn));
            }
            case PUSH_SCREW -> {
                double pitch = in.number("thread_pitch_mm");
                double arm = in.number("arm_mm");
                yield in.made(() -> new ScrewGeometry.PushScrew(pitch, arm));
            }
            case TURNBUCKLE -> {
                double lower = in.number("hinge_to_lower_mm");
                double upper = in.number("hinge_to_upper_mm");
                double length = in.number("length_at_reference_mm");
                Angle reference = in.angle("reference_altitude_deg");
                double lead = in.number("lead_per_turn_mm");
                yield in.made(() -> new ScrewGeometry.Turnbuckle(lower, upper, length, reference, lead));
            }
        };
    }
}
