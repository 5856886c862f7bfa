package org.collarbook.intake;

import java.net.URI;

import org.collarbook.access.Caller;
import org.collarbook.platform.Revision;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/demo", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Demo")
class DemoController {

    private final Demo demo;

    DemoController(Demo demo) {
        this.demo = demo;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Fill an empty register with an invented fleet; the answer is the report of its import")
    ResponseEntity<ImportReport> load(Caller caller) {
        var report = demo.load(caller.id());
        return ResponseEntity.created(URI.create("/api/imports/" + report.id()))
                .eTag(new Revision(report.version()).etag()).body(report);
    }
}
