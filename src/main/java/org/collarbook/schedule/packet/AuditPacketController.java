package org.collarbook.schedule.packet;

import java.io.IOException;
import java.io.OutputStream;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;

@RestController
@Tag(name = "History")
class AuditPacketController {

    private final ContainerPackets containers;
    private final SitePackets sites;

    AuditPacketController(ContainerPackets containers, SitePackets sites) {
        this.containers = containers;
        this.sites = sites;
    }

    @GetMapping(path = "/api/containers/{id}/audit-packet", produces = "application/json")
    @Operation(summary = "All that is on record of a container, for an inspector", description = """
            Its identity, every requalification with its full contents, repairs, holds, what is due and why, fills, place, \
            parts, and the proof that nothing was altered since it was recorded: one snapshot of one moment. A record that \
            was merged into another is refused with the one that counts.""")
    ResponseEntity<ContainerPacket> ofContainer(@PathVariable UUID id, Caller caller) {
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(containers.of(id, caller));
    }

    @GetMapping(path = "/api/containers/{id}/audit-packet", produces = "application/pdf")
    @Operation(summary = "The same to print (also by ?format=pdf)")
    void ofContainerAsPdf(@PathVariable UUID id, Caller caller, HttpServletResponse response) throws IOException {
        var packet = containers.of(id, caller);
        ContainerPacketPdf.write(packet, pdf("container", response));
    }

    @GetMapping(path = "/api/sites/{id}/audit-packet", produces = "application/json")
    @Operation(summary = "What stands at a site, for an inspector", description = """
            A line for each container: which it is, its status, what is due by which rule, its last requalification, and \
            whether its chain is whole. At most 2,000 containers; of a larger site each container has a packet.""")
    ResponseEntity<SitePacket> ofSite(@PathVariable UUID id, Caller caller) {
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(sites.of(id, caller));
    }

    @GetMapping(path = "/api/sites/{id}/audit-packet", produces = "application/pdf")
    @Operation(summary = "The same to print (also by ?format=pdf)")
    void ofSiteAsPdf(@PathVariable UUID id, Caller caller, HttpServletResponse response) throws IOException {
        var packet = sites.of(id, caller);
        SitePacketPdf.write(packet, pdf("site", response));
    }

    private static OutputStream pdf(String of, HttpServletResponse response) throws IOException {
        response.setContentType("application/pdf");
        response.setHeader(HttpHeaders.CACHE_CONTROL, CacheControl.noStore().getHeaderValue());
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + of + "-audit-packet.pdf\"");
        return response.getOutputStream();
    }
}
