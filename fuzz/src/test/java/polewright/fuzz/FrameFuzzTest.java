package polewright.fuzz;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import org.junit.jupiter.api.Tag;

/**
 * Frames in every format. Without {@code JAZZER_FUZZ} each stored input is read once; the inputs are in {@code
 * FrameFuzzTestInputs}, in a folder for each method.
 */
@Tag("slow")
class FrameFuzzTest {
    // The limits of DamagedFilesTest, and for larger files as many pixels as their bytes can describe.
    private static final Allowance ALLOWANCE = new Allowance(100 * Allowance.MEGABYTE, 1000);

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/fits.dict")
    @FuzzTest
    void fitsPlain(byte[] content) {
        Execution.of(FrameTargets::frame, content, ALLOWANCE);
    }

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/fits.dict")
    @FuzzTest
    void fitsTiled(byte[] content) {
        Execution.of(FrameTargets::frame, content, ALLOWANCE);
    }

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/tiff.dict")
    @FuzzTest
    void tiff(byte[] content) {
        Execution.of(FrameTargets::frame, content, ALLOWANCE);
    }

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/png.dict")
    @FuzzTest
    void png(byte[] content) {
        Execution.of(FrameTargets::frame, content, ALLOWANCE);
    }

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/jpeg.dict")
    @FuzzTest
    void jpeg(byte[] content) {
        Execution.of(FrameTargets::frame, content, ALLOWANCE);
    }

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/tiff.dict")
    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/jpeg.dict")
    @FuzzTest
    void rawPreview(byte[] content) {
        Execution.of(FrameTargets::raw, content, ALLOWANCE);
    }
}
