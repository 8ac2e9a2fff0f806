package polewright.fuzz;

import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each target has a seed that is accepted: with refused ones alone a fuzzer never gets past the first check. */
class SeedsTest {
    private static final Map<String, Execution.Target> TARGETS = Map.of(
            "rawPreview", FrameTargets::raw,
            "jsonLines", TextTargets::jsonLines,
            "rig", TextTargets::rig,
            "centrings", TextTargets::centrings,
            "skyline", TextTargets::skyline,
            "formPost", FormTarget::post);

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Frame/fitsPlain/uint16.fits",
                "Frame/fitsTiled/rice.fits",
                "Frame/tiff/grey16.tiff",
                "Frame/png/grey16.png",
                "Frame/jpeg/grey.jpg",
                "Frame/jpeg/one-grey.jpg",
                "Frame/rawPreview/boxed.raw",
                "Frame/rawPreview/dng-big.raw",
                "Frame/rawPreview/dng-little.raw",
                "Frame/rawPreview/searched.raw",
                "Text/jsonLines/whole-night.jsonl",
                "Text/rig/fork.json",
                "Text/centrings/usual.csv",
                "Text/skyline/commas.csv",
                "Text/formPost/drift.post",
            })
    void isAccepted(String seed) throws IOException {
        String[] parts = seed.split("/", -1);
        String resource = parts[0] + "FuzzTestInputs/" + parts[1] + "/" + parts[2];
        try (InputStream in = Objects.requireNonNull(SeedsTest.class.getResourceAsStream(resource), resource)) {
            byte[] content = in.readAllBytes();
            Execution.Target target = TARGETS.getOrDefault(parts[1], FrameTargets::frame);
            assertThatCode(() -> target.take(content)).doesNotThrowAnyException();
        }
    }
}
