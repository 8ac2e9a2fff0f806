package polewright.data;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Builds {@code WMM2025.COF}, the coefficients of the World Magnetic Model 2025 in the format that Orekit reads.
 *
 * <p>From the npm package {@code geomagnetism} 0.2.0, file {@code data/wmm-2025.json} (coefficients in nT and nT per
 * year; the model itself is in the public domain). The package {@code geomag} 1.0.0 also has a {@code WMM.COF}, but
 * that is WMM2020.
 */
public final class BuildMagneticTable {
    private static final int DEGREE = 12;

    private BuildMagneticTable() {}

    /**
     * Writes the table.
     *
     * @param args the unpacked package {@code geomagnetism}; the folder to write to
     * @throws IOException when either cannot be used
     */
    public static void main(String[] args) throws IOException {
        if (args.length != 2) {
            throw new IllegalArgumentException(
                    "give the folder of the package geomagnetism and the folder to write to");
        }
        JsonNode model = new ObjectMapper()
                .readTree(Path.of(args[0], "data", "wmm-2025.json").toFile());
        Files.writeString(Path.of(args[1], "WMM2025.COF"), table(model), StandardCharsets.US_ASCII);
    }

    static String table(JsonNode model) {
        if (model.path("epoch").asDouble() != 2025 || model.path("n_max").asInt() != DEGREE) {
            throw new IllegalArgumentException("not WMM2025: " + model.path("name"));
        }
        var table = new StringBuilder(String.format(
                Locale.ROOT,
                "%10s %8.2f %2d %2d %2d %8.2f %8.2f %6.1f %6.1f %17s %4d\n",
                "WMM2025",
                2025.0,
                DEGREE,
                DEGREE,
                0,
                2025.0,
                2030.0,
                -1.0,
                600.0,
                "WMM2025",
                0));
        // Index 0 is degree 0, which is absent from a field without monopoles.
        int index = 1;
        for (int degree = 1; degree <= DEGREE; degree++) {
            for (int order = 0; order <= degree; order++, index++) {
                table.append(String.format(
                        Locale.ROOT,
                        "%2d %2d %9.1f %9.1f %9.1f %9.1f %26s %4d\n",
                        degree,
                        order,
                        model.path("main_field_coeff_g").path(index).asDouble(),
                        model.path("main_field_coeff_h").path(index).asDouble(),
                        model.path("secular_var_coeff_g").path(index).asDouble(),
                        model.path("secular_var_coeff_h").path(index).asDouble(),
                        "WMM2025",
                        index));
            }
        }
        return table.toString();
    }
}
