-- The lining inspection (L) and the thickness test (T) of 49 CFR 180.407(c) are methods too.
alter table requalification drop constraint requalification_method_check;

alter table requalification add constraint requalification_method_check check (method in ('VOLUMETRIC_EXPANSION',
    'PROOF_PRESSURE', 'EXTERNAL_VISUAL', 'ULTRASONIC', 'EDDY_CURRENT_VISUAL', 'ACOUSTIC_EMISSION', 'SHELL_ONLY',
    'SHELL_AND_FILLER', 'V', 'I', 'K', 'P', 'L', 'T'));
