package polewright.operations.input;

import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import polewright.operations.camera.NearPlace;

/** {@code pole}, {@code north pole}, {@code south pole}, {@code RA,DEC} in degrees, or anything in the sky by name. */
public final class NearInput implements ITypeConverter<NearPlace> {
    @Override
    public NearPlace convert(String typed) {
        return switch (typed.strip().toLowerCase(Locale.ROOT).replace('-', ' ').replace('_', ' ')) {
            case "pole" -> new NearPlace.Pole(Optional.empty());
            case "north pole" -> new NearPlace.Pole(Optional.of(true));
            case "south pole" -> new NearPlace.Pole(Optional.of(false));
            default -> new NearPlace.Body(BodyFinder.named(typed));
        };
    }
}
