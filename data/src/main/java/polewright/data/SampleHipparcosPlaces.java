package polewright.data;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Builds the file of Hipparcos positions against which the tests of {@code sky} check the atlas. */
public final class SampleHipparcosPlaces {
    private static final double FAINTEST = 8;
    private static final int SAMPLING = 97;

    private SampleHipparcosPlaces() {}

    public static void main(String[] arguments) throws IOException {
        Sources sources = Sources.of(arguments);
        List<String> rows = new ArrayList<>();
        rows.add("hip,ra_deg,dec_deg,v_mag");
        int seen = 0;
        for (HipparcosStars.Star star : HipparcosStars.read(sources.celestial()).stars()) {
            if (star.magnitude() <= FAINTEST && seen++ % SAMPLING == 0) {
                rows.add(String.format(
                        Locale.ROOT,
                        "%d,%.4f,%.4f,%.2f",
                        star.number(),
                        star.raDeg(),
                        star.decDeg(),
                        star.magnitude()));
            }
        }
        TableFile.write(
                sources.out().resolve("places.csv"),
                List.of("Every 97th Hipparcos star to V 8, ICRS, J2000.0, to 0.0001 deg. Made by"
                        + " polewright.data.SampleHipparcosPlaces."),
                rows);
    }
}
