package org.collarbook;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

@SpringBootApplication
public class Collarbook {

    public static void main(String[] args) {
        SpringApplication.run(Collarbook.class, args);
    }
}
