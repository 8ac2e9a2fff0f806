package polewright.fuzz;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import org.junit.jupiter.api.Tag;

/**
 * Text in every format, and what the pages post. Without {@code JAZZER_FUZZ} each stored input is read once; the
 * inputs are in {@code TextFuzzTestInputs}, in a folder for each method.
 */
@Tag("slow")
class TextFuzzTest {
    private static final Allowance OF_A_NIGHT = new Allowance(100 * Allowance.MEGABYTE, 20_000);
    private static final Allowance OF_A_TABLE = new Allowance(50 * Allowance.MEGABYTE, 2_000);

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/events.dict")
    @FuzzTest
    void jsonLines(byte[] text) {
        Execution.of(TextTargets::jsonLines, text, OF_A_NIGHT);
    }

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/events.dict")
    @FuzzTest
    void rig(byte[] text) {
        Execution.of(TextTargets::rig, text, OF_A_NIGHT);
    }

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/centrings.dict")
    @FuzzTest
    void centrings(byte[] text) {
        Execution.of(TextTargets::centrings, text, OF_A_NIGHT);
    }

    @FuzzTest
    void skyline(byte[] text) {
        Execution.of(TextTargets::skyline, text, OF_A_TABLE);
    }

    @DictionaryFile(resourcePath = "/polewright/fuzz/dictionaries/forms.dict")
    @FuzzTest
    void formPost(byte[] posted) {
        Execution.of(FormTarget::post, posted, OF_A_TABLE);
    }
}
