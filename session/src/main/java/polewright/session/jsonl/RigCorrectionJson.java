package polewright.session.jsonl;

import java.util.Optional;
import java.util.function.Supplier;
import polewright.mount.rig.FinishSense;
import polewright.mount.rig.RigCorrection;
import polewright.mount.rig.ScrewCorrection;
import polewright.mount.rig.ScrewOrder;
import polewright.mount.rig.ScrewSense;
import polewright.sky.InputRefused;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** A correction of the rig: the whole rig under {@code rig}, or some of its keys. */
final class RigCorrectionJson {
    private RigCorrectionJson() {}

    static void write(FieldWriter out, RigCorrection correction) {
        if (correction instanceof RigCorrection.AnotherRig another) {
            out.object("rig", another.rig(), RigJson::write);
        } else if (correction instanceof RigCorrection.Figures figures) {
            writeFigures(out, figures);
        } else {
            throw new IllegalStateException("no JSON for " + correction.getClass());
        }
    }

    private static void writeFigures(FieldWriter out, RigCorrection.Figures figures) {
        writeScrew(out, "azimuth_screw", figures.azimuthScrew());
        writeScrew(out, "altitude_screw", figures.altitudeScrew());
        figures.levelSigma().ifPresent(level -> out.angle("level_sigma_deg", level));
        figures.clampSigma().ifPresent(clamp -> out.angle("clamp_sigma_arcmin", clamp));
        figures.optics().ifPresent(optics -> out.list("optics", optics, RigJson::writeOptic));
        figures.cameras().ifPresent(cameras -> out.list("cameras", cameras, RigJson::writeCamera));
        figures.screwOrder().ifPresent(order -> out.word("screw_order", order));
        figures.drive().ifPresent(drive -> out.object("drive", drive, DriveJson::write));
        figures.travel().ifPresent(travel -> out.object("travel", travel, TravelJson::write));
    }

    private static void writeScrew(FieldWriter out, String key, ScrewCorrection screw) {
        if (!screw.isNone()) {
            out.object(key, screw, RigCorrectionJson::writeScrewFigures);
        }
    }

    private static void writeScrewFigures(FieldWriter out, ScrewCorrection screw) {
        screw.geometry().ifPresent(geometry -> out.object("geometry", geometry, ScrewJson::writeGeometry));
        screw.clockwise().ifPresent(sense -> out.word("clockwise", sense));
        screw.relativeGainSigma().ifPresent(gain -> out.number("gain_sigma_fraction", gain));
        screw.handSigmaTurns().ifPresent(hand -> out.number("hand_sigma_turns", hand));
        screw.backlashTurns().ifPresent(play -> out.number("backlash_turns", play));
        screw.finish().ifPresent(finish -> out.word("finish", finish));
    }

    static RigCorrection read(FieldReader in) {
        if (in.has("rig")) {
            return new RigCorrection.AnotherRig(in.object("rig", RigJson::read));
        }
        ScrewCorrection azimuth = in.has("azimuth_screw")
                ? in.object("azimuth_screw", RigCorrectionJson::readScrew)
                : ScrewCorrection.NONE;
        ScrewCorrection altitude = in.has("altitude_screw")
                ? in.object("altitude_screw", RigCorrectionJson::readScrew)
                : ScrewCorrection.NONE;
        var level = given(in, "level_sigma_deg", () -> in.angle("level_sigma_deg"));
        var clamp = given(in, "clamp_sigma_arcmin", () -> in.angle("clamp_sigma_arcmin"));
        var optics = given(in, "optics", () -> in.list("optics", RigJson::readOptic));
        var cameras = given(in, "cameras", () -> in.list("cameras", RigJson::readCamera));
        var order = given(in, "screw_order", () -> in.choice("screw_order", ScrewOrder.class));
        var drive = given(in, "drive", () -> in.object("drive", DriveJson::read));
        var travel = given(in, "travel", () -> in.object("travel", TravelJson::read));
        return in.made(() ->
                new RigCorrection.Figures(azimuth, altitude, level, clamp, optics, cameras, order, drive, travel));
    }

    private static ScrewCorrection readScrew(FieldReader in) {
        ScrewCorrection screw = new ScrewCorrection(
                given(in, "geometry", () -> in.object("geometry", ScrewJson::readGeometry)),
                given(in, "clockwise", () -> in.choice("clockwise", ScrewSense.class)),
                given(in, "gain_sigma_fraction", () -> in.number("gain_sigma_fraction")),
                given(in, "hand_sigma_turns", () -> in.number("hand_sigma_turns")),
                given(in, "backlash_turns", () -> in.number("backlash_turns")),
                given(in, "finish", () -> in.choice("finish", FinishSense.class)));
        if (screw.isNone()) {
            in.made(() -> {
                throw new InputRefused("no figure of the screw is corrected", "give the figure that was wrong");
            });
        }
        return screw;
    }

    private static <T> Optional<T> given(FieldReader in, String key, Supplier<T> reader) {
        return in.has(key) ? Optional.of(reader.get()) : Optional.empty();
    }
}
