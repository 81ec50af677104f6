package org.twinrig.translation;

import java.util.Optional;
import org.twinrig.response.Response;
import org.twinrig.study.ReferenceCurve;

/**
 * An old graph as its file holds it.
 *
 * @param entry its row of the catalogue
 * @param raw the same with its reference added back; as published for a raw graph
 * @param before the reference that was added back
 */
record OldGraphFile(
    CatalogueEntry entry, Response published, Response raw, Optional<ReferenceCurve> before) {}
