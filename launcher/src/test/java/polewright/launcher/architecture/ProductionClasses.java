package polewright.launcher.architecture;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;

/** All production classes, and those that break the rules on purpose. */
final class ProductionClasses {
    static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("polewright");

    /** The modules that use the pure ones: they may look at the clock, and read and write files. */
    static final String[] APPLICATION = {
        "polewright.operations..",
        "polewright.report..",
        "polewright.cli..",
        "polewright.web..",
        "polewright.launcher.."
    };

    private ProductionClasses() {}

    static JavaClasses only(Class<?>... broken) {
        return new ClassFileImporter().importClasses(broken);
    }
}
