package polewright.sky.magnetic;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.Year;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.orekit.models.earth.GeoMagneticField;
import org.orekit.models.earth.GeoMagneticModelLoader;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.time.SkyTime;

/**
 * The World Magnetic Model 2025: spherical harmonics to degree and order 12, with a yearly change of each coefficient.
 *
 * <p>Orekit ({@code GeoMagneticField}) evaluates the series; it agrees with NOAA's 100 test values to 0.005° of
 * declination, the rounding of their table. This class adds geodetic positions on WGS84 and dates as decimal years.
 *
 * <p><b>A table that ages.</b> Valid 2025.0 to 2030.0. Outside that range the field is extrapolated with the yearly
 * change, with a note. When its successor comes out (December 2029): build its table with
 * {@code polewright.data.BuildMagneticTable}, add a factory method next to {@link #wmm2025}, and copy its test values.
 *
 * <p>Source: NOAA NCEI Geomagnetic Modeling Team and British Geological Survey, World Magnetic Model 2025 (December
 * 2024), public domain.
 */
public final class MagneticModel {
    private static final String TABLE = "/polewright/sky/magnetic/WMM2025.COF";
    private static final double VALID_FROM_YEAR = 2025;
    private static final double VALID_UNTIL_YEAR = 2030;
    private static final double NANOTESLA_PER_TESLA = 1e9;
    /** North and east are undefined at the pole itself; 1 cm away they are defined, and the field is the same. */
    private static final double LARGEST_LATITUDE_RAD = Math.PI / 2 - 1.6e-9;

    private final GeoMagneticField atStart;
    private final GeoMagneticField atEnd;

    private MagneticModel(GeoMagneticField model) {
        atStart = model.transformModel(VALID_FROM_YEAR);
        atEnd = model.transformModel(VALID_UNTIL_YEAR);
    }

    private static final class Wmm2025 {
        private static final MagneticModel INSTANCE = new MagneticModel(load());

        private Wmm2025() {}
    }

    /** The bundled model, loaded on first use. */
    public static MagneticModel wmm2025() {
        return Wmm2025.INSTANCE;
    }

    private static GeoMagneticField load() {
        try (InputStream bytes = MagneticModel.class.getResourceAsStream(TABLE)) {
            if (bytes == null) {
                throw new IllegalStateException("the jar lacks " + TABLE);
            }
            var loader = new GeoMagneticModelLoader();
            loader.loadData(bytes, TABLE);
            return loader.getModels().iterator().next();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public MagneticField field(Site site, SkyTime time) {
        return field(site, time.utc());
    }

    public MagneticField field(Site site, Instant utc) {
        return field(site.latitude(), site.longitude(), site.heightMetres(), utc);
    }

    /** The field anywhere from the ground to 600 km up, higher than any {@link Site}. */
    MagneticField field(Angle latitude, Angle longitude, double heightMetres, Instant utc) {
        double year = decimalYear(utc);
        Vector3D start = vectorTesla(atStart, latitude, longitude, heightMetres);
        Vector3D end = vectorTesla(atEnd, latitude, longitude, heightMetres);
        // Coefficients change linearly and the field is linear in them, so between and beyond two dates it is linear
        // too.
        double share = (year - VALID_FROM_YEAR) / (VALID_UNTIL_YEAR - VALID_FROM_YEAR);
        Vector3D field = new Vector3D(1 - share, start, share, end).scalarMultiply(NANOTESLA_PER_TESLA);
        double horizontal = Math.hypot(field.getX(), field.getY());
        return new MagneticField(field.getX(), field.getY(), field.getZ(), notes(year, horizontal));
    }

    private static Vector3D vectorTesla(GeoMagneticField model, Angle latitude, Angle longitude, double heightMetres) {
        double shortOfThePole = Math.min(latitude.abs().radians(), LARGEST_LATITUDE_RAD);
        return model.calculateField(
                        Math.copySign(shortOfThePole, latitude.radians()), longitude.radians(), heightMetres)
                .getFieldVector();
    }

    /** The date as a decimal year in the model's convention: 2025.5 is noon on 2 July 2025. */
    static double decimalYear(Instant utc) {
        ZonedDateTime t = utc.atZone(ZoneOffset.UTC);
        Instant newYear =
                LocalDate.of(t.getYear(), 1, 1).atStartOfDay(ZoneOffset.UTC).toInstant();
        double days = (utc.getEpochSecond() - newYear.getEpochSecond() + utc.getNano() * 1e-9) / 86_400;
        return t.getYear() + days / Year.of(t.getYear()).length();
    }

    private static List<String> notes(double year, double horizontalNanotesla) {
        List<String> notes = new ArrayList<>();
        if (year < VALID_FROM_YEAR || year > VALID_UNTIL_YEAR) {
            notes.add(String.format(
                    Locale.ROOT,
                    "The magnetic model WMM2025 is valid from 2025.0 to 2030.0. For %.1f it is extrapolated, and the"
                            + " declination may be wrong by more than stated. Check north by the Sun or a star.",
                    year));
        }
        switch (CompassTrust.at(horizontalNanotesla)) {
            case USELESS ->
                notes.add(String.format(
                        Locale.ROOT,
                        "A compass is of no use here: the horizontal field is %.0f nT, under 2000 nT. Find north by"
                                + " the Sun or"
                                + " a star.",
                        horizontalNanotesla));
            case CAUTION ->
                notes.add(String.format(
                        Locale.ROOT,
                        "A compass is weak here: the horizontal field is %.0f nT, under 6000 nT. Check north by the"
                                + " Sun or a"
                                + " star.",
                        horizontalNanotesla));
            case NORMAL -> {}
        }
        return notes;
    }
}
