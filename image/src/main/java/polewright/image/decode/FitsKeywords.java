package polewright.image.decode;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import nom.tam.fits.Header;
import nom.tam.fits.HeaderCard;

/**
 * Keywords of a FITS image; those missing from its own header are looked up in the primary header.
 *
 * @param image header of the HDU with the image
 * @param first primary header; may be the same
 */
record FitsKeywords(Header image, Header first) {
    private static final Set<String> NO_MOSAIC =
            Set.of("", "NONE", "MONO", "GREY", "GRAY", "RGB", "FALSE", "F", "0", "N", "NO", "UNKNOWN");

    /** A value as text, trimmed; empty if there is none. */
    Optional<String> text(String keyword) {
        HeaderCard card = image.findCard(keyword);
        if (card == null) {
            card = first.findCard(keyword);
        }
        return Optional.ofNullable(card)
                .map(HeaderCard::getValue)
                .map(String::strip)
                .filter(value -> !value.isEmpty());
    }

    /** A number, also if it was written in quotes; empty if there is none or it is not finite. */
    OptionalDouble number(String keyword) {
        Optional<String> text = text(keyword);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        try {
            double value = Double.parseDouble(text.get().replace('D', 'E').replace('d', 'e'));
            return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    /** The first of the keywords with a positive number: zero means "not known" in many headers. */
    OptionalDouble positive(String... keywords) {
        for (String keyword : keywords) {
            OptionalDouble value = number(keyword);
            if (value.isPresent() && value.getAsDouble() > 0) {
                return value;
            }
        }
        return OptionalDouble.empty();
    }

    /** Whether the header names a colour filter pattern (BAYERPAT, COLORTYP: common practice). */
    boolean hasColourFilterPattern() {
        return text("BAYERPAT")
                .or(() -> text("COLORTYP"))
                .filter(value -> !NO_MOSAIC.contains(value.toUpperCase(Locale.ROOT)))
                .isPresent();
    }

    /** The saturation value: SATURATE (common practice), otherwise DATAMAX (FITS standard 4.0, section 4.4.2.5). */
    OptionalDouble saturation() {
        return positive("SATURATE", "DATAMAX");
    }
}
