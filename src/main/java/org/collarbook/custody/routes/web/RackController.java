package org.collarbook.custody.routes.web;

import java.util.List;
import java.util.UUID;

import org.collarbook.custody.Places;
import org.collarbook.custody.SiteKind;
import org.collarbook.custody.routes.Racks;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/sites/{id}/rack", produces = "application/json")
@Tag(name = "Routes")
class RackController {

    private final Racks racks;
    private final Places places;

    RackController(Racks racks, Places places) {
        this.racks = racks;
        this.places = places;
    }

    record RackResponse(UUID vehicle, int version, List<SizePlaces> places) {}

    record SizePlaces(String size, int places) {}

    @GetMapping
    @Operation(summary = "How many cylinders of each size a vehicle's rack takes", description = """
            0: none fits. A size that is not named is not known.""")
    ResponseEntity<RackResponse> one(@PathVariable UUID id) {
        vehicle(id);
        return answer(id, racks.of(id));
    }

    @PutMapping
    @Operation(summary = "Tell how many cylinders of each size the rack takes, in place of what was told", description = """
            The rack has a version of its own, which the site's does not follow. A size is written as containers have \
            it: `20 lb`, `33.5 lb`, `1000 gal`.""")
    ResponseEntity<RackResponse> tell(@PathVariable UUID id,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody RackRequest request) {
        vehicle(id);
        return answer(id, racks.set(id, ifMatch, request.read()));
    }

    private void vehicle(UUID id) {
        var site = places.site(id).orElseThrow(() -> Problem.notFound("site").asException());
        if (site.kind() != SiteKind.VEHICLE) {
            throw Problem.conflict("NOT_A_VEHICLE", "Site " + site.code() + " is a " + site.kind()
                    + "; only a VEHICLE has a rack.").asException();
        }
    }

    private static ResponseEntity<RackResponse> answer(UUID vehicle, Racks.Rack rack) {
        return ResponseEntity.ok().eTag(new Revision(rack.version()).etag())
                .body(new RackResponse(vehicle, rack.version(), rack.places().entrySet().stream()
                        .map(size -> new SizePlaces(size.getKey(), size.getValue())).toList()));
    }
}
