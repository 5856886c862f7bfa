-- Also the tests of portable tanks, and what is done to the parts of a container or beside it.
alter table requalification
    drop constraint requalification_method_check,
    add constraint requalification_method_check check (method in ('VOLUMETRIC_EXPANSION', 'PROOF_PRESSURE',
        'EXTERNAL_VISUAL', 'ULTRASONIC', 'EDDY_CURRENT_VISUAL', 'ACOUSTIC_EMISSION', 'SHELL_ONLY', 'SHELL_AND_FILLER',
        'V', 'I', 'K', 'P', 'L', 'T', 'PERIODIC', 'INTERMEDIATE', 'EXAMINATION', 'THOROUGH_EXAMINATION',
        'VALVE_REPLACED', 'VALVE_SERVICED', 'VALVE_INSPECTED', 'HOSE_TESTED', 'UNLOADING_SYSTEM_INSPECTED',
        'PROTECTION_INSTALLED', 'PROTECTION_TESTED', 'EXTINGUISHER_INSPECTED', 'EXTINGUISHER_MAINTAINED',
        'EXTINGUISHER_EMPTIED', 'EXTINGUISHER_PRESSURE_TESTED'));
