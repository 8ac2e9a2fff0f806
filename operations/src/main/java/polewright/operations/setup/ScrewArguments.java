package polewright.operations.setup;

import java.util.List;
import java.util.Optional;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewCorrection;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Option;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.operations.input.WordInput;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * Corrections of what was entered wrongly for one screw.
 *
 * @param clockwise what a clockwise turn does
 * @param reversed that it works the opposite way
 * @param gain factor on the movement per turn
 * @param perTurn the movement per turn
 * @param play its backlash
 */
public record ScrewArguments(
        String screw,
        Argument<ScrewSense> clockwise,
        Argument<Boolean> reversed,
        Argument<Double> gain,
        Argument<Double> perTurn,
        Argument<Double> play) {
    public static final ScrewArguments AZIMUTH = of("azimuth", "SIDE", ScrewSense.RIGHT, ScrewSense.LEFT);
    public static final ScrewArguments ALTITUDE = of("altitude", "WAY", ScrewSense.RAISES, ScrewSense.LOWERS);

    private static ScrewArguments of(String screw, String placeholder, ScrewSense one, ScrewSense other) {
        List<Option> senses = WordInput.words(one, other).stream()
                .map(word -> new Option(word, word))
                .toList();
        Figure factor = Figure.of(Unit.NONE).between(0.01, 100, "1 is as entered, 0.5 is half as far");
        return new ScrewArguments(
                screw,
                Argument.option(
                                screw + "-clockwise",
                                "What a clockwise turn of the " + screw + " screw does to the axis",
                                "",
                                new Choice<>(
                                        placeholder, "as entered", senses, new WordInput<>(ScrewSense.class)::convert))
                        .seldom(),
                Argument.option(
                        screw + "-reversed",
                        Character.toUpperCase(screw.charAt(0)) + screw.substring(1) + " screw works the opposite way",
                        "",
                        new Tick()),
                Argument.option(
                        screw + "-gain",
                        "Factor on how far one turn of the " + screw + " screw goes",
                        "0.5 is half as far as entered.",
                        factor),
                Argument.option(
                                screw + "-per-turn",
                                "Movement of the axis in " + screw + " per turn",
                                "",
                                Figure.of(Unit.DEGREES))
                        .seldom(),
                Argument.option(screw + "-play", "Backlash of the " + screw + " screw", "", Figure.of(Unit.TURNS))
                        .seldom());
    }

    List<Argument<?>> all() {
        return List.of(clockwise, reversed, gain, perTurn, play);
    }

    ScrewCorrection correction(Entries entries, Screw entered) {
        if (entries.given(clockwise).isPresent() && entries.isTicked(reversed)) {
            throw twice("which way the " + screw + " screw works", clockwise, reversed);
        }
        if (entries.given(gain).isPresent() && entries.given(perTurn).isPresent()) {
            throw twice("how far the " + screw + " screw goes", gain, perTurn);
        }
        Optional<ScrewSense> sense =
                entries.isTicked(reversed) ? Optional.of(entered.clockwise().reversed()) : entries.given(clockwise);
        return new ScrewCorrection(
                geometry(entries, entered),
                sense,
                Optional.empty(),
                Optional.empty(),
                entries.given(play),
                Optional.empty());
    }

    private static InputRefused twice(String what, Argument<?> one, Argument<?> other) {
        return new InputRefused(what + " is given twice", "give {" + one.name() + "} or {" + other.name() + "}");
    }

    private Optional<ScrewGeometry> geometry(Entries entries, Screw entered) {
        return entries.given(gain)
                .map(factor -> entered.geometry().scaled(factor))
                .or(() -> entries.given(perTurn)
                        .map(degrees -> new ScrewGeometry.DegreesPerTurn(Angle.ofDegrees(degrees))));
    }
}
