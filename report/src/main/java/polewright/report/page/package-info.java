/** Pages: HTML from templates (src/main/jte), and the same as PDF. Loaded only when a page is requested. */
@NullMarked
package polewright.report.page;

import org.jspecify.annotations.NullMarked;
