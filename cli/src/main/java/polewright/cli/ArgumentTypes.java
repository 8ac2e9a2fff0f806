package polewright.cli;

import java.nio.file.Path;
import picocli.CommandLine;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.camera.Drive;
import polewright.image.decode.Mosaic;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.ScrewSense;
import polewright.operations.input.FileInput;
import polewright.operations.input.NumberInput;
import polewright.operations.input.WordInput;
import polewright.planning.tonight.Purpose;

/** Conversion of typed arguments to values, for options without a converter of their own. */
final class ArgumentTypes {
    private ArgumentTypes() {}

    static void register(CommandLine commands) {
        commands.registerConverter(double.class, new NumberInput());
        commands.registerConverter(Double.class, new NumberInput());
        commands.registerConverter(Long.class, new NumberInput.Whole());
        commands.registerConverter(long.class, new NumberInput.Whole());
        commands.registerConverter(int.class, new NumberInput.Count());
        commands.registerConverter(Path.class, new FileInput());
        commands.registerConverter(ScrewSense.class, new WordInput<>(ScrewSense.class));
        commands.registerConverter(MountKind.class, new WordInput<>(MountKind.class));
        commands.registerConverter(Orientation.class, new WordInput<>(Orientation.class));
        commands.registerConverter(ScrewTurn.Which.class, new WordInput<>(ScrewTurn.Which.class));
        commands.registerConverter(Drive.class, new WordInput<>(Drive.class));
        commands.registerConverter(Purpose.class, new WordInput<>(Purpose.class));
        commands.registerConverter(Mosaic.class, new WordInput<>(Mosaic.class));
        commands.registerConverter(FrameOptions.YesOrNo.class, new WordInput<>(FrameOptions.YesOrNo.class));
    }
}
