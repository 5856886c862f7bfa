package org.collarbook.portal;

import java.util.List;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Page;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.json.JsonMapper;

@RestController
@Tag(name = "Portal")
class PortalSitesController {

    private final PortalSites sites;
    private final JsonMapper json;

    PortalSitesController(PortalSites sites, JsonMapper json) {
        this.sites = sites;
        this.json = json;
    }

    /** For the document: the page as served. */
    record PortalSitePage(List<PortalSite> items, @Nullable String next) {}

    @GetMapping(path = "/api/portal/sites", produces = "application/json")
    @Operation(summary = "The customer's sites by pages, with how many containers have which status")
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = PortalSitePage.class)))
    @ApiResponse(responseCode = "304", description = "Not changed since the ETag named in If-None-Match")
    @Nullable
    ResponseEntity<byte[]> sites(@RequestParam(required = false) @Nullable String customer,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable String size, CustomerScope scope, Inputs wrong,
            HttpServletRequest request,
            HttpServletResponse response) {
        var whose = PortalQuestion.customer(scope, customer, wrong);
        var after = PortalQuestion.after(cursor, wrong);
        var rows = PortalQuestion.rows(size, wrong);
        wrong.done();
        if (whose == null || rows == null) {
            throw new IllegalStateException("a question was neither read nor refused");
        }
        var page = Page.of(sites.page(scope, whose, after, rows), rows, site -> Cursor.after(site.id()));
        return new Served(request, response, json).linking(page.next()).body(page, null);
    }

    @GetMapping(path = "/api/portal/sites/{id}", produces = "application/json")
    @Operation(summary = "One of the customer's sites, with how many containers have which status")
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = PortalSite.class)))
    @ApiResponse(responseCode = "304", description = "Not changed since the ETag named in If-None-Match")
    @Nullable
    ResponseEntity<byte[]> site(@PathVariable UUID id, @RequestParam(required = false) @Nullable String customer,
            CustomerScope scope, Inputs wrong, HttpServletRequest request, HttpServletResponse response) {
        CustomerId whose = PortalQuestion.customer(scope, customer, wrong);
        wrong.done();
        if (whose == null) {
            throw new IllegalStateException("a question was neither read nor refused");
        }
        return new Served(request, response, json).body(sites.one(scope, whose, id), null);
    }
}
