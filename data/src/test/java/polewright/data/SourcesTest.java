package polewright.data;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import polewright.sky.InputRefused;

class SourcesTest {
    @Test
    void omittedSource_defaultsToItsPackagesPath() {
        Sources sources = Sources.of("tycho=a:b");
        assertThat(sources.tycho()).containsExactly(Path.of("a"), Path.of("b"));
        assertThat(sources.motions()).isEqualTo(Path.of("/usr/share/libswe/ephe/sefstars.txt"));
    }

    @Test
    void unknownSource_isRefused() {
        assertThatThrownBy(() -> Sources.of("stars=x"))
                .isInstanceOf(InputRefused.class)
                .hasMessage("'stars=x' is not a source. Give name=path, the name one of tycho, motions, celestial,"
                        + " borders, out.");
    }
}
