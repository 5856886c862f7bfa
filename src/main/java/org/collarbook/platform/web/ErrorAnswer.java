package org.collarbook.platform.web;

import org.collarbook.platform.Problem;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;

/** What failed before a controller was reached (in a filter, in the server itself) is a problem detail too. */
@Hidden
@RestController
class ErrorAnswer implements ErrorController {

    @RequestMapping("/error")
    ResponseEntity<?> error(HttpServletRequest request) {
        if (request.getAttribute(RequestDispatcher.ERROR_EXCEPTION) instanceof Throwable failure) {
            var busy = Busy.in(failure);
            if (busy.isPresent()) {
                return Busy.answer(busy.get());
            }
        }
        var code = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE);
        var status = code instanceof Integer number ? HttpStatus.resolve(number) : null;
        // nothing failed where somebody asks for this path itself
        var known = status == null ? HttpStatus.NOT_FOUND : status;
        var problem = known.is5xxServerError()
                ? Problem.of(known, "UNEXPECTED", "The service failed and stored nothing of this request.")
                : Problem.of(known, known.name(), known.getReasonPhrase() + ".");
        return ResponseEntity.status(known).contentType(MediaType.APPLICATION_PROBLEM_JSON).body(problem.body());
    }
}
