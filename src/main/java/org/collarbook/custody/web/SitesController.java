package org.collarbook.custody.web;

import java.net.URI;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.Place;
import org.collarbook.custody.Places;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/sites", produces = "application/json")
@Tag(name = "Places")
class SitesController {

    private final Places places;
    private final Idempotency idempotency;

    SitesController(Places places, Idempotency idempotency) {
        this.places = places;
        this.idempotency = idempotency;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Open a site: a customer's premises, a depot, a vehicle or a requalifier")
    ResponseEntity<?> open(@RequestBody SiteRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var content = request.toContent(id -> places.customer(id).isPresent());
        return idempotency.once(key, caller.id(), "POST /api/sites", request, () -> {
            var site = places.openSite(content);
            return answer(ResponseEntity.created(URI.create("/api/sites/" + site.siteId())), site);
        });
    }

    @GetMapping("/{id}")
    @Operation(summary = "One site")
    ResponseEntity<SiteResponse> one(@PathVariable UUID id) {
        return answer(ResponseEntity.ok(),
                places.site(id).orElseThrow(() -> Problem.notFound("site").asException()));
    }

    @GetMapping
    @Operation(summary = "Sites, of one customer or all, by pages")
    Page<SiteResponse> list(@RequestParam(required = false) @Nullable UUID customer,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        return places.sites(Cursor.parseId(cursor), customer, PageSize.of(size))
                .map(rows -> rows.stream().map(SiteResponse::from).toList());
    }

    @PutMapping("/{id}")
    @Operation(summary = "Change what is recorded of a site")
    ResponseEntity<SiteResponse> change(@PathVariable UUID id,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody SiteRequest request) {
        var content = request.toContent(customer -> places.customer(customer).isPresent());
        return answer(ResponseEntity.ok(), places.changeSite(id, ifMatch, content));
    }

    private static ResponseEntity<SiteResponse> answer(ResponseEntity.BodyBuilder to, Place site) {
        return to.eTag(new Revision(site.version()).etag()).body(SiteResponse.from(site));
    }
}
